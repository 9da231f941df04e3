package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.filter.EqualiserBand;
import offtape.core.filter.EqualiserBand.Kind;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * Bands moved until their gain comes nearest to a wanted one (Levenberg-Marquardt). Each number
 * stays within sane limits, since it is the logistic function of what is searched.
 *
 * @param hz frequencies at which both are compared
 * @param wanted gain wanted there, dB, 0 at 1 kHz
 * @param weight how much each counts
 * @param limit of gains
 */
record BandSearch(double[] hz, double[] wanted, double[] weight, BoostLimit limit) {

    private static final double LEAST_Q = 0.5;
    private static final double MOST_Q = 6;
    private static final double LEAST_HZ = 40;
    private static final double MOST_HZ = 16_000;
    private static final double UNITY_HZ = 1000;
    private static final double STEP = 1e-5;

    private static final int MOST_ITERATIONS = 100;
    private static final int MOST_EVALUATIONS = 300;

    /** Starts keep this share of a range off its ends, where nothing would move any more. */
    private static final double OFF_END = 0.02;

    /**
     * The bands that fit best from a start.
     *
     * @param gainsOnly whether only their gains are moved
     * @param calm how much a decibel of gain weighs, so that bands do not work against each other
     *     for nothing
     */
    List<EqualiserBand> improved(List<EqualiserBand> start, boolean gainsOnly, double calm) {
        Best best = new Best(theta(start, gainsOnly));
        try {
            new LevenbergMarquardtOptimizer()
                    .optimize(
                            new LeastSquaresBuilder()
                                    .start(best.theta)
                                    .target(new double[hz.length + start.size()])
                                    .model(p -> best.kept(p, evaluated(p, start, gainsOnly, calm)))
                                    .maxIterations(MOST_ITERATIONS)
                                    .maxEvaluations(MOST_EVALUATIONS)
                                    .lazyEvaluation(false)
                                    .build());
        } catch (MathIllegalStateException e) {
            // no end within the steps allowed: the best of them is good enough
            return bands(best.theta, start, gainsOnly);
        }
        return bands(best.theta, start, gainsOnly);
    }

    /** The best point that was looked at. */
    private static final class Best {
        private double[] theta;
        private double cost = Double.POSITIVE_INFINITY;

        Best(double[] first) {
            theta = first;
        }

        Pair<RealVector, RealMatrix> kept(RealVector at, Pair<RealVector, RealMatrix> found) {
            double now = found.getFirst().getNorm();
            if (now < cost) {
                cost = now;
                theta = at.toArray();
            }
            return found;
        }
    }

    private Pair<RealVector, RealMatrix> evaluated(
            RealVector point, List<EqualiserBand> start, boolean gainsOnly, double calm) {
        double[] theta = point.toArray();
        List<EqualiserBand> bands = bands(theta, start, gainsOnly);
        double[][] own = bands.stream().map(this::gains).toArray(double[][]::new);
        double[] here = new double[hz.length + bands.size()];
        for (int b = 0; b < bands.size(); b++) {
            here[hz.length + b] = calm * bands.get(b).gainDb();
        }
        for (int i = 0; i < hz.length; i++) {
            here[i] = -weight[i] * wanted[i];
            for (double[] band : own) {
                here[i] += band[i];
            }
        }
        double[][] slopes = new double[here.length][theta.length];
        for (int k = 0; k < theta.length; k++) {
            double[] moved = theta.clone();
            moved[k] += STEP;
            // a number moves the one band that it belongs to
            int band = bandOf(k, start, gainsOnly);
            EqualiserBand other = bands(moved, start, gainsOnly).get(band);
            double[] there = gains(other);
            double louder = other.gainDb() - bands.get(band).gainDb();
            slopes[hz.length + band][k] = calm * louder / STEP;
            for (int i = 0; i < hz.length; i++) {
                slopes[i][k] = (there[i] - own[band][i]) / STEP;
            }
        }
        return new Pair<>(new ArrayRealVector(here), new Array2DRowRealMatrix(slopes));
    }

    /** Weighted gain of a band re 1 kHz. */
    private double[] gains(EqualiserBand band) {
        double unity = band.gainDb(UNITY_HZ);
        double[] gains = new double[hz.length];
        Arrays.setAll(gains, i -> weight[i] * (band.gainDb(hz[i]) - unity));
        return gains;
    }

    private static int bandOf(int number, List<EqualiserBand> start, boolean gainsOnly) {
        int first = 0;
        int band = 0;
        while (number >= first + numbers(start.get(band), gainsOnly)) {
            first += numbers(start.get(band), gainsOnly);
            band++;
        }
        return band;
    }

    private static int numbers(EqualiserBand band, boolean gainsOnly) {
        return gainsOnly ? 1 : band.kind() == Kind.PEAK ? 3 : 2;
    }

    private double[] theta(List<EqualiserBand> bands, boolean gainsOnly) {
        List<Double> all = new ArrayList<>();
        for (EqualiserBand b : bands) {
            all.add(free(b.gainDb(), -limit.cutDb(), limit.boostDb()));
            if (!gainsOnly) {
                all.add(free(Math.log(b.frequencyHz()), Math.log(LEAST_HZ), Math.log(MOST_HZ)));
                if (b.kind() == Kind.PEAK) {
                    all.add(free(Math.log(b.q()), Math.log(LEAST_Q), Math.log(MOST_Q)));
                }
            }
        }
        return all.stream().mapToDouble(x -> x).toArray();
    }

    private List<EqualiserBand> bands(double[] t, List<EqualiserBand> start, boolean gainsOnly) {
        List<EqualiserBand> bands = new ArrayList<>();
        int k = 0;
        for (EqualiserBand b : start) {
            double gain = bounded(t[k++], -limit.cutDb(), limit.boostDb());
            double at = b.frequencyHz();
            double q = b.q();
            if (!gainsOnly) {
                at = Math.exp(bounded(t[k++], Math.log(LEAST_HZ), Math.log(MOST_HZ)));
                if (b.kind() == Kind.PEAK) {
                    q = Math.exp(bounded(t[k++], Math.log(LEAST_Q), Math.log(MOST_Q)));
                }
            }
            bands.add(new EqualiserBand(b.kind(), at, gain, q));
        }
        return bands;
    }

    private static double bounded(double free, double low, double high) {
        return low + (high - low) / (1 + Math.exp(-free));
    }

    private static double free(double value, double low, double high) {
        if (!(high > low)) {
            return 0;
        }
        double share = (value - low) / (high - low);
        double inside = Math.max(OFF_END, Math.min(1 - OFF_END, share));
        return Math.log(inside / (1 - inside));
    }
}
