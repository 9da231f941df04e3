package offtape.core.align;

/**
 * A short rising tone that is sent before and behind a sound, so that the return can be put back in
 * time to a fraction of a sample, whatever the sound is. It stays where tape is at its best.
 */
public final class AlignmentMark {

    /** Length in seconds. */
    public static final double SECONDS = 0.3;

    private static final double LOW_HZ = 300;
    private static final double HIGH_HZ = 7000;

    /** Share of its length in which it swells, and in which it fades. */
    private static final double EDGE = 0.15;

    private AlignmentMark() {}

    /**
     * Its samples.
     *
     * @param sampleRateHz at least 16 kHz
     * @param peak highest magnitude, full-scale units
     */
    public static double[] samples(int sampleRateHz, double peak) {
        int count = (int) Math.round(SECONDS * sampleRateHz);
        double[] x = new double[count];
        double sweep = (HIGH_HZ - LOW_HZ) / SECONDS;
        for (int i = 0; i < count; i++) {
            double t = (double) i / sampleRateHz;
            double phase = 2 * Math.PI * (LOW_HZ + sweep * t / 2) * t;
            x[i] = peak * edge((i + 0.5) / count) * Math.sin(phase);
        }
        return x;
    }

    private static double edge(double place) {
        double near = Math.min(place, 1 - place) / EDGE;
        return near >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * near);
    }
}
