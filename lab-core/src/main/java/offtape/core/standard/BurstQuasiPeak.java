package offtape.core.standard;

/**
 * The dynamics of the quasi-peak meter of BS.468: two followers in cascade behind a full-wave
 * rectifier, each rising with one time constant and falling with another. The four were fitted to
 * the burst tables of the Recommendation and meet every row within a quarter of its tolerance.
 */
final class BurstQuasiPeak {

    private static final double FIRST_RISE_SECONDS = 0.00136;
    private static final double FIRST_FALL_SECONDS = 0.26883;
    private static final double SECOND_RISE_SECONDS = 0.13506;
    private static final double SECOND_FALL_SECONDS = 0.19058;

    private final double firstRise;
    private final double firstFall;
    private final double secondRise;
    private final double secondFall;

    BurstQuasiPeak(double sampleRateHz) {
        firstRise = share(FIRST_RISE_SECONDS, sampleRateHz);
        firstFall = share(FIRST_FALL_SECONDS, sampleRateHz);
        secondRise = share(SECOND_RISE_SECONDS, sampleRateHz);
        secondFall = share(SECOND_FALL_SECONDS, sampleRateHz);
    }

    /** Puts the pointer in the place of each sample, uncalibrated. */
    void follow(double[] x) {
        double first = 0;
        double second = 0;
        for (int i = 0; i < x.length; i++) {
            double rise = Math.abs(x[i]) - first;
            first += rise * (rise > 0 ? firstRise : firstFall);
            double follow = first - second;
            second += follow * (follow > 0 ? secondRise : secondFall);
            x[i] = second;
        }
    }

    private static double share(double seconds, double sampleRateHz) {
        return -Math.expm1(-1 / (seconds * sampleRateHz));
    }
}
