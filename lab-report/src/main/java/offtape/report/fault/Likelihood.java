package offtape.report.fault;

import offtape.core.text.Sentences;

/** How likely something is, in words with the figure. */
public final class Likelihood {

    private static final Sentences SAID = Sentences.near(Likelihood.class);

    /** From here on a fault counts as likely. */
    public static final double LIKELY = 0.5;

    /** From here on a fault alone is ground enough to act. */
    public static final double DECISIVE = 0.8;

    /** What is less likely is not told: it is not worth a reader's time. */
    public static final double TOLD = 0.15;

    private static final double POSSIBLE = 0.2;

    private static final double ALMOST_CERTAIN = 0.95;

    private Likelihood() {}

    /** Such as {@code very likely, 87 %}; {@code share} is 0 to 1. */
    public static String words(double share) {
        return SAID.say(key(share), percent(share));
    }

    /** In whole percent; what is not certain is never written as 0 or 100. */
    public static String percent(double share) {
        return Math.max(1, Math.min(99, Math.round(100 * share))) + "\u00a0%";
    }

    private static String key(double share) {
        if (share >= ALMOST_CERTAIN) {
            return "likelihood.almost-certain";
        }
        if (share >= DECISIVE) {
            return "likelihood.very-likely";
        }
        if (share >= LIKELY) {
            return "likelihood.likely";
        }
        return share >= POSSIBLE ? "likelihood.possible" : "likelihood.unlikely";
    }
}
