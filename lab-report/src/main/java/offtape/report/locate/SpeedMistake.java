package offtape.report.locate;

import offtape.core.text.Sentences;
import offtape.core.unit.TapeSpeed;

/**
 * What a speed far from nominal is likely to come from: a machine made for another mains frequency,
 * another speed selected, a file whose header names another sample rate, or a fault.
 *
 * @param code code of the note in the results, or null if the speed is near nominal
 * @param sentence what the reader should know
 */
public record SpeedMistake(String code, String sentence) {

    private static final Sentences SAID = Sentences.near(SpeedMistake.class);

    /** Code of a tape that ran at another of the machine's speeds. */
    public static final String WRONG_SPEED = "wrong-speed";

    /** Code of a speed that another mains frequency explains. */
    public static final String MAINS = "mains-frequency";

    /** Code of a speed that nothing of that explains. */
    public static final String FAR_OFF = "far-off-speed";

    private static final double USUAL = 0.03;
    private static final double WITHIN = 0.01;

    /** A wrong speed is told by this much of a factor of two. */
    private static final double ABOUT_TWO = 0.25;

    /** A wrong sample rate is exact but for the machine's own error. */
    private static final double AS_RATES = 0.005;

    /** Pairs of sample rates that are taken for one another, and so on to four times the rate. */
    private static final double RATES = 48_000 / 44_100.0;

    /**
     * Judges a speed.
     *
     * @param ratio tape speed over nominal
     * @param nominalMmPerS the speed the programme was made for, or null if not stated
     */
    public static SpeedMistake of(double ratio, Double nominalMmPerS) {
        if (Math.abs(ratio - 1) <= USUAL) {
            return new SpeedMistake(null, "");
        }
        if (near(ratio, 2, ABOUT_TWO) || near(ratio, 0.5, ABOUT_TWO)) {
            return new SpeedMistake(WRONG_SPEED, wrongSpeed(ratio, nominalMmPerS));
        }
        if (near(ratio, 5.0 / 6, WITHIN) || near(ratio, 6.0 / 5, WITHIN)) {
            return new SpeedMistake(
                    MAINS, SAID.say(ratio < 1 ? "mains-slow" : "mains-fast", 100 * ratio));
        }
        boolean rates = near(ratio, RATES, AS_RATES) || near(ratio, 1 / RATES, AS_RATES);
        return new SpeedMistake(
                FAR_OFF, SAID.say(rates ? "as-sample-rates" : "far-off", 100 * ratio));
    }

    private static boolean near(double ratio, double value, double within) {
        return Math.abs(ratio / value - 1) <= within;
    }

    private static String wrongSpeed(double ratio, Double nominalMmPerS) {
        double factor = ratio > 1 ? 2 : 0.5;
        double rest = 100 * (ratio / factor - 1);
        boolean exact = Math.abs(rest) < 100 * WITHIN;
        if (nominalMmPerS == null) {
            return ratio > 1
                    ? exact ? SAID.say("ran-twice") : SAID.say("ran-twice-about", rest)
                    : exact ? SAID.say("ran-half") : SAID.say("ran-half-about", rest);
        }
        TapeSpeed made = new TapeSpeed(nominalMmPerS);
        TapeSpeed ran = new TapeSpeed(factor * nominalMmPerS);
        return exact
                ? SAID.say("ran-other", made, ran)
                : SAID.say("ran-other-about", made, ran, rest);
    }

    /** Whether another of the machine's speeds was selected. */
    public boolean isWrongSpeed() {
        return WRONG_SPEED.equals(code);
    }
}
