package offtape.report.measure.sweep;

import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * How much of the least phase a path really turns in the bass: 1 for amplifiers and heads, 0 for
 * something that changes magnitude alone, such as a filter made to turn no phase. The phase of a
 * followed sweep is that of the path and of the tape's motion, ψ = s·θ + ω·e, where the error e of
 * time is small and smooth; s and a constant e are fitted by least squares, each frequency weighted
 * by 1/ω, as motion turns the phase the more the higher the frequency.
 */
final class PhaseShare {

    private static final double TO_HZ = 500;
    private static final int FEWEST = 12;

    /** Under this spread of the least phase, radians, nothing is told and nothing depends on it. */
    private static final double LEAST_SPREAD = 0.15;

    /** A share this near to all or nothing is that, and the rest of it the tape's motion. */
    private static final double SURE = 0.3;

    private PhaseShare() {}

    /**
     * The share, 0 to 1; 1 if the recording cannot tell.
     *
     * @param fromHz below this frequency the sweep's beginning still rings
     * @param hz frequencies, rising
     * @param measured phase at each, radians, to whole turns; NaN where nothing is heard
     * @param least the phase that goes with the magnitude, radians
     */
    static double of(double fromHz, double[] hz, double[] measured, double[] least) {
        int from = 0;
        while (from < hz.length && hz[from] < fromHz) {
            from++;
        }
        int to = from;
        while (to < hz.length && hz[to] < TO_HZ && !Double.isNaN(measured[to])) {
            to++;
        }
        if (to - from < FEWEST || Math.abs(least[from] - least[to - 1]) < LEAST_SPREAD) {
            return 1;
        }
        // a polarity turned over is half a turn, and the one that fits is meant
        Fit upright = fit(hz, unwrapped(measured, least, from, to, 0), least, from);
        Fit turned = fit(hz, unwrapped(measured, least, from, to, Math.PI), least, from);
        double share = upright.misfit() <= turned.misfit() ? upright.share() : turned.share();
        return share > 1 - SURE ? 1 : share < SURE ? 0 : share;
    }

    private record Fit(double share, double misfit) {}

    private static Fit fit(double[] hz, double[] psi, double[] least, int from) {
        double[][] rows = new double[psi.length][];
        double[] values = new double[psi.length];
        for (int k = 0; k < psi.length; k++) {
            double weight = 1000 / hz[from + k];
            rows[k] = new double[] {weight * least[from + k], 1};
            values[k] = weight * psi[k];
        }
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.setNoIntercept(true);
        fit.newSampleData(values, rows);
        return new Fit(fit.estimateRegressionParameters()[0], fit.calculateResidualSumOfSquares());
    }

    /** Upwards from the bass, where motion turns the phase least. */
    private static double[] unwrapped(
            double[] measured, double[] least, int from, int to, double turn) {
        double[] psi = new double[to - from];
        double before = least[from] / 2;
        for (int i = from; i < to; i++) {
            double value = measured[i] - turn;
            psi[i - from] = value - 2 * Math.PI * Math.rint((value - before) / (2 * Math.PI));
            before = psi[i - from];
        }
        return psi;
    }
}
