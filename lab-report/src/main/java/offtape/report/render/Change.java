package offtape.report.render;

import offtape.core.unit.Quantity;

/**
 * A figure in two sessions.
 *
 * @param name what it is
 * @param signed whether its plus sign says something
 * @param before in the first session
 * @param after in the second session
 */
record Change(String name, boolean signed, Quantity before, Quantity after) {

    /** Whether there is a difference to tell. */
    boolean isKnown() {
        return before.isKnown() && after.isKnown() && before.unit().equals(after.unit());
    }

    /** Whether the difference is larger than its uncertainty. */
    boolean isClear() {
        return isKnown() && Math.abs(difference().value()) > difference().uncertainty();
    }

    /**
     * After less before; the uncertainties, taken as independent, add as squares (JCGM 100, clause
     * 5.1.2).
     */
    Quantity difference() {
        return Quantity.known(
                after.value() - before.value(),
                after.unit(),
                Math.hypot(before.uncertainty(), after.uncertainty()));
    }

    /** The difference in words. */
    String words() {
        if (!isKnown()) {
            return "not known";
        }
        return Numbers.full(difference(), true) + (isClear() ? "" : " (no clear change)");
    }
}
