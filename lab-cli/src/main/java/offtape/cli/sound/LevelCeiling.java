package offtape.cli.sound;

import offtape.core.text.Sentences;

/**
 * The highest level that may be played.
 *
 * @param dbfs peak, dB re full scale, 0 or less
 */
public record LevelCeiling(double dbfs) {

    private static final Sentences SAID = Sentences.near(LevelCeiling.class);

    /** No limit but that of the samples. */
    public static final LevelCeiling FULL_SCALE = new LevelCeiling(0);

    /** A peak this little above is rounding. */
    private static final double ROUNDING_DB = 0.01;

    /**
     * Checks.
     *
     * @throws IllegalArgumentException in a plain sentence
     */
    public LevelCeiling {
        if (!(dbfs >= -100 && dbfs <= 0)) {
            throw new IllegalArgumentException(SAID.say("ceiling-range"));
        }
    }

    /** The same as a peak in full-scale units. */
    public double peak() {
        return Math.pow(10, dbfs / 20);
    }

    /** Whether a peak may not be played. */
    public boolean isExceededBy(double peak) {
        return peak > peak() * Math.pow(10, ROUNDING_DB / 20);
    }

    /**
     * Refuses what is too loud.
     *
     * @param peak of what is to be played, full-scale units
     * @param what its name, at the start of a sentence
     * @param remedy what can be done, a sentence
     * @throws TooLoudException if it is above the ceiling
     */
    public void check(double peak, String what, String remedy) {
        if (isExceededBy(peak)) {
            throw new TooLoudException(
                    SAID.say("above-ceiling", what, 20 * Math.log10(peak), dbfs, remedy));
        }
    }
}
