package offtape.report.measure.loss;

/** What takes highs away (or adds them), with its name in results and in sentences. */
enum Cause {
    SPACING("spacing", "a space between tape and head (dirt, worn or slack tape guidance)", "µm"),
    APERTURE("gap-or-azimuth", "a wide gap or a head that stands askew", "µm"),
    GAP("gap", "a wide or worn gap", "µm"),
    AZIMUTH("azimuth", "a head that stands askew", "µm"),
    THICKNESS("thickness", "a thickly magnetised layer", "µm"),
    EQUALISATION("equalisation", "the wrong equalisation", "dB"),
    UPPER_EDGE("upper-edge", "the roll-off of an amplifier", "Hz");

    private final String key;
    private final String words;
    private final String unit;

    Cause(String key, String words, String unit) {
        this.key = key;
        this.words = words;
        this.unit = unit;
    }

    /** Name in results. */
    String key() {
        return key;
    }

    /** The cause inside a sentence. */
    String words() {
        return words;
    }

    /** Unit of its figure, unless it can be told as an angle. */
    String unit() {
        return unit;
    }
}
