package offtape.report.cost;

import offtape.core.json.Range;
import offtape.core.text.Sentences;

/** Checks of what people write about money and time. */
final class Amounts {

    private static final Sentences SAID = Sentences.near(Amounts.class);

    static final double MOST_MONEY = 999_999_999;

    static final double MOST_HOURS = 9999;

    private Amounts() {}

    /** Two ends that are given together, the lower one first. */
    static void check(String what, Double low, Double high, double most, String unit) {
        Range.within(what + "Low", low, 0, most, unit);
        Range.within(what + "High", high, 0, most, unit);
        Range.require((low == null) == (high == null), SAID.say("given-together", what, what));
        Range.require(low == null || low <= high, SAID.say("low-above-high", what, what));
    }
}
