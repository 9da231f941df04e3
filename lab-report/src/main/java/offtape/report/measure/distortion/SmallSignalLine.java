package offtape.report.measure.distortion;

import java.util.Arrays;

/**
 * The line that a ladder would follow without compression. Near the bottom a symmetrical
 * characteristic loses gain in proportion to the square of the amplitude (third-order term of its
 * series), so gain over squared amplitude is a straight line whose value at zero is the
 * small-signal gain.
 *
 * @param gainDb replay level less record level of a small signal, dB
 * @param deviationDb its standard deviation, dB
 */
record SmallSignalLine(double gainDb, double deviationDb) {

    /** Steps that have lost no more than this against the lowest tell the small-signal gain, dB. */
    private static final double SMALL_LOSS_DB = 0.15;

    /** A straight line is fitted to so many levels, or goes through the two lowest. */
    private static final int LEVELS = 3;

    /** A correction from two levels alone may be wrong by this share of it. */
    private static final double DOUBT = 0.5;

    /**
     * Fits the lower steps, each weighted by its noise.
     *
     * @param recordDb record levels, at least one, none lower than the one before
     * @param gainDb replay less record level
     * @param deviationDb standard deviation of each, above 0
     */
    static SmallSignalLine fit(double[] recordDb, double[] gainDb, double[] deviationDb) {
        int small = 1;
        while (small < gainDb.length
                && gainDb[small] > gainDb[0] - SMALL_LOSS_DB - 3 * deviationDb[0]) {
            small++;
        }
        if (Arrays.stream(recordDb, 0, small).distinct().count() < LEVELS) {
            return fromTwo(recordDb, gainDb, deviationDb);
        }
        double w = 0;
        double wp = 0;
        double wpp = 0;
        double wg = 0;
        double wpg = 0;
        for (int i = 0; i < small; i++) {
            double weight = 1 / (deviationDb[i] * deviationDb[i]);
            double p = power(recordDb[i]);
            w += weight;
            wp += weight * p;
            wpp += weight * p * p;
            wg += weight * gainDb[i];
            wpg += weight * p * gainDb[i];
        }
        double determinant = w * wpp - wp * wp;
        return new SmallSignalLine(
                (wpp * wg - wp * wpg) / determinant, Math.sqrt(wpp / determinant));
    }

    /**
     * The straight line through the two lowest levels, or the lowest alone if gain does not fall.
     */
    private static SmallSignalLine fromTwo(double[] recordDb, double[] gain, double[] deviation) {
        int next = 1;
        while (next < recordDb.length && recordDb[next] <= recordDb[0]) {
            next++;
        }
        double correction = 0;
        if (next < recordDb.length) {
            double reach = power(recordDb[0]) / (power(recordDb[next]) - power(recordDb[0]));
            correction = Math.max(0, (gain[0] - gain[next]) * reach);
        }
        return new SmallSignalLine(
                gain[0] + correction, Math.hypot(deviation[0], DOUBT * correction));
    }

    private static double power(double db) {
        return Math.pow(10, db / 10);
    }
}
