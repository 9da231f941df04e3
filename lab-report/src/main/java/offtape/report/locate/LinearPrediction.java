package offtape.report.locate;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealVector;

/**
 * The best linear prediction of how late the first frame of a programme is, from readings of
 * lateness near it, given how the machine's speed wanders ({@link WowMemory}).
 *
 * <p>Method: N. Wiener, "Extrapolation, Interpolation, and Smoothing of Stationary Time Series",
 * 1949, in the discrete form for a process of stationary increments (G. Matheron, "Principles of
 * geostatistics", Economic Geology 58, 1963).
 *
 * @param anchorSeconds the moment of the programme from which lateness is counted
 * @param slopeSigma how well the mean speed before the anchor is known, one standard deviation
 * @param memory how lateness wanders
 * @param tone a long tone in which the prediction can be tried, if one is heard
 */
record LinearPrediction(
        double anchorSeconds,
        double slopeSigma,
        WowMemory memory,
        Optional<TonePhase.Course> tone) {

    /** A tone of this length tells the wow of a machine well enough. */
    private static final double WELL_KNOWN_S = 30;

    private static final double PHASE_SIGMA = 100;
    private static final double PLACE_SIGMA_S = 0.01;

    /**
     * Lateness at the first frame.
     *
     * @param lateSeconds programme seconds
     * @param variance of that, s²
     */
    record Result(double lateSeconds, double variance) {}

    /** The prediction from readings, at least one. */
    Result from(List<PhaseReading> readings) {
        int n = readings.size();
        double[][] k = new double[n][n];
        double[] wanted = new double[n];
        double[] heard = new double[n];
        for (int i = 0; i < n; i++) {
            PhaseReading a = readings.get(i);
            for (int j = 0; j <= i; j++) {
                PhaseReading b = readings.get(j);
                double common =
                        a.group() == b.group()
                                ? PHASE_SIGMA
                                        * PHASE_SIGMA
                                        / (4 * Math.PI * Math.PI * a.hz() * b.hz())
                                : 0;
                k[i][j] = covariance(a.programmeSeconds(), b.programmeSeconds());
                k[i][j] += common;
                k[j][i] = k[i][j];
            }
            double sigma = Math.hypot(a.sigmaSeconds(), 2e-8);
            k[i][i] += sigma * sigma;
            wanted[i] = covariance(a.programmeSeconds(), 0);
            heard[i] = a.lateSeconds();
        }
        DecompositionSolver solver =
                new CholeskyDecomposition(new Array2DRowRealMatrix(k, false), 1e-9, 0).getSolver();
        RealVector weights = solver.solve(new ArrayRealVector(wanted, false));
        double prior = covariance(0, 0);
        double foretold =
                Math.max(0, prior - weights.dotProduct(new ArrayRealVector(wanted, false)));
        double seen =
                tone.map(t -> new PredictionTrial(t).sigma(readings, weights.toArray(), 0))
                        .orElse(Double.NaN);
        double doubt =
                Math.max(
                        1, WELL_KNOWN_S / tone.map(TonePhase.Course::seconds).orElse(WELL_KNOWN_S));
        return new Result(
                weights.dotProduct(new ArrayRealVector(heard, false)),
                Double.isNaN(seen)
                        ? doubt * foretold
                        : seen * seen + besideWow(readings, weights.toArray()));
    }

    /** Variance of a prediction by noise and by what is not known of the mean speed. */
    private double besideWow(List<PhaseReading> readings, double[] weights) {
        double noise = 0;
        double along = anchorSeconds;
        for (int i = 0; i < weights.length; i++) {
            PhaseReading r = readings.get(i);
            noise += Math.pow(weights[i] * r.sigmaSeconds(), 2);
            along += weights[i] * (r.programmeSeconds() - anchorSeconds);
        }
        return noise + Math.pow(slopeSigma * along, 2);
    }

    /** Covariance of the lateness at two times; it is counted from the anchor. */
    private double covariance(double p, double q) {
        double a = p - anchorSeconds;
        double b = q - anchorSeconds;
        double wander = (memory.variance(a) + memory.variance(b) - memory.variance(p - q)) / 2;
        return wander + slopeSigma * slopeSigma * a * b + PLACE_SIGMA_S * PLACE_SIGMA_S;
    }
}
