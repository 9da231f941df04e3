package offtape.report.fault.symptom;

/** Machines of cassettes and of reels, whose parts and figures differ in size. */
public final class TapeKind {

    /** Slower tape than this runs in cassettes, mm/s (common practice, no source). */
    private static final double CASSETTE_MM_PER_S = 60;

    private TapeKind() {}

    /** Whether tape of a speed in mm/s runs in a cassette. */
    public static boolean isCassette(double mmPerS) {
        return mmPerS < CASSETTE_MM_PER_S;
    }
}
