package offtape.report.measure.loss;

import offtape.core.text.Sentences;

/** What takes highs away (or adds them), with its name in results and in sentences. */
enum Cause {
    SPACING("spacing", "µm"),
    APERTURE("gap-or-azimuth", "µm"),
    GAP("gap", "µm"),
    AZIMUTH("azimuth", "µm"),
    THICKNESS("thickness", "µm"),
    EQUALISATION("equalisation", "dB"),
    UPPER_EDGE("upper-edge", "Hz");

    private static final Sentences SAID = Sentences.near(Cause.class);

    private final String key;
    private final String unit;

    Cause(String key, String unit) {
        this.key = key;
        this.unit = unit;
    }

    /** Name in results. */
    String key() {
        return key;
    }

    /** The cause inside a sentence. */
    String words() {
        return SAID.say("cause-" + key);
    }

    /** Unit of its figure, unless it can be told as an angle. */
    String unit() {
        return unit;
    }
}
