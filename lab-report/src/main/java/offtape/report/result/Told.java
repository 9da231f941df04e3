package offtape.report.result;

import offtape.core.unit.Quantity;

/** Figures as they are read back, where one may be missing. */
final class Told {

    private Told() {}

    /** The figure, or that it is unknown. */
    static Quantity orUnknown(Quantity figure) {
        return figure == null ? Quantity.unknown("The session does not tell it.") : figure;
    }
}
