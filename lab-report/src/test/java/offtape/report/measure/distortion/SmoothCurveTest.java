package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmoothCurveTest {

    /** A straight line costs nothing: it is returned as it is, whatever the noise said. */
    @Test
    void aStraightLineStaysOne() {
        double[] x = {-20, -14, -13, -2, 3};
        double[] y = Arrays.stream(x).map(v -> 2 * v - 7).toArray();
        SmoothCurve curve = new SmoothCurve(x, y, filled(5, 0.1));
        for (double at : new double[] {-20, -17, -5.5, 3}) {
            assertEquals(2 * at - 7, curve.at(at), 1e-7);
        }
        assertEquals(2, curve.slope(-6), 1e-6);
        assertEquals(0, curve.misfit(), 1e-4);
    }

    @Test
    void valuesWithoutNoiseAreMet() {
        double[] x = {0, 2, 4, 7};
        double[] y = {1, 5, 4, 8};
        SmoothCurve curve = new SmoothCurve(x, y, filled(4, 1e-6));
        for (int i = 0; i < x.length; i++) {
            assertEquals(y[i], curve.at(x[i]), 1e-5);
        }
    }

    /**
     * A value that is known a thousand times better than its neighbours tell it leaves the curve as
     * uncertain there as it is itself: σ·p/√(σ² + p²), p being the deviation from the others.
     */
    @Test
    void wellKnownValuesKeepTheirUncertainty() {
        double[] x = IntStream.range(0, 24).mapToDouble(i -> -30 + 2 * i).toArray();
        double[] y = new double[24];
        for (double sigma : new double[] {1e-4, 1e-6, 1e-8}) {
            SmoothCurve curve = new SmoothCurve(x, y, filled(24, sigma));
            for (int i = 0; i < x.length; i++) {
                assertEquals(1, curve.deviation(x[i]) / sigma, 1e-4, x[i] + " dB");
            }
        }
    }

    /**
     * The same deviation by covariances, in the way of universal kriging (N. Cressie, Statistics
     * for Spatial Data, section 3.4, from memory): K holds those of the values, F the straight
     * line.
     */
    @Test
    void theDeviationIsThatOfKriging() {
        double[] x = {-20, -17, -15, -12, -8, -7, -3, 0, 2};
        double[] deviation = {0.3, 0.1, 0.2, 0.4, 0.2, 0.2, 0.1, 0.3, 0.2};
        SmoothCurve curve = new SmoothCurve(x, new double[9], deviation);
        for (double place : new double[] {-20, -18.3, -15, -10, -5, 1.9, 2, 5}) {
            assertEquals(kriged(x, deviation, place), curve.deviation(place), 1e-7);
        }
    }

    private static double kriged(double[] x, double[] deviation, double place) {
        int n = x.length;
        RealMatrix system = new Array2DRowRealMatrix(n + 2, n + 2);
        RealVector wanted = new ArrayRealVector(n + 2);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                system.setEntry(i, j, covariance(x[i] - x[0], x[j] - x[0]));
            }
            system.addToEntry(i, i, deviation[i] * deviation[i]);
            double[] line = {1, x[i] - x[0]};
            for (int k = 0; k < 2; k++) {
                system.setEntry(i, n + k, line[k]);
                system.setEntry(n + k, i, line[k]);
            }
            wanted.setEntry(i, covariance(x[i] - x[0], place - x[0]));
        }
        wanted.setEntry(n, 1);
        wanted.setEntry(n + 1, place - x[0]);
        RealVector weights = new LUDecomposition(system).getSolver().solve(wanted);
        double own = covariance(place - x[0], place - x[0]);
        return Math.sqrt(own - weights.dotProduct(wanted));
    }

    /** ∫ (a−t)²/2 · (b−t)²/2 dt up to the nearer, and the bend at the start. */
    private static double covariance(double a, double b) {
        double s = Math.min(a, b);
        double d = Math.abs(a - b);
        double noise = Math.pow(s, 5) / 20 + d * Math.pow(s, 4) / 8 + d * d * s * s * s / 12;
        return Math.pow(SmoothCurve.STIFFNESS, 2) * noise
                + Math.pow(SmoothCurve.CURVATURE * a * b / 2, 2);
    }

    /** The stray of a value is its distance from the curve fitted to all others, done directly. */
    @Test
    void straysAreThoseOfTheCurveWithoutTheValue() {
        Random random = new Random(5);
        double[] x = IntStream.range(0, 12).mapToDouble(i -> -20 + 2.5 * i).toArray();
        double[] y = Arrays.stream(x).map(v -> 0.05 * v * v + random.nextGaussian()).toArray();
        double[] deviation = filled(12, 0.3);
        SmoothCurve all = new SmoothCurve(x, y, deviation);
        for (int i = 1; i < x.length; i++) {
            int out = i;
            int[] rest = IntStream.range(0, 12).filter(j -> j != out).toArray();
            SmoothCurve others =
                    new SmoothCurve(
                            Arrays.stream(rest).mapToDouble(j -> x[j]).toArray(),
                            Arrays.stream(rest).mapToDouble(j -> y[j]).toArray(),
                            filled(11, 0.3));
            assertEquals(y[i] - others.at(x[i]), all.strays()[i], 1e-6);
        }
    }

    /**
     * Along with K3 of tanh over level, by numerical integration of its Fourier components, in
     * steps of 2, 3 and 4 dB: between the steps the curve keeps within the deviation it states.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3, 4, 6})
    void theThirdHarmonicOfTanhIsFollowed(double step) {
        int n = (int) (26 / step);
        double[] x = IntStream.range(0, n).mapToDouble(i -> -20 + step * i).toArray();
        double[] y = Arrays.stream(x).map(SmoothCurveTest::k3OfTanh).toArray();
        SmoothCurve curve = new SmoothCurve(x, y, filled(n, 0.015));
        double worst = 0;
        for (double at = -10; at < x[n - 1]; at += 0.7) {
            double error = Math.abs(curve.at(at) - k3OfTanh(at));
            worst = Math.max(worst, error);
            assertTrue(error < curve.deviation(at), at + " dB: " + error);
        }
        System.out.printf("K3 of tanh in steps of %.0f dB: worst %.4f dB%n", step, worst);
        assertTrue(curve.misfit() < 1, "misfit " + curve.misfit());
    }

    /**
     * Curves drawn from the process itself, its third derivative summed up step by step, with the
     * noise stated: χ² over its degrees of freedom is 1 on average. Of 200 draws with 15 degrees
     * each the mean has a deviation of √(2/3000) = 2.6 %; four of them are allowed.
     */
    @Test
    void curvesOfTheProcessHaveAMisfitOfOne() {
        Random random = new Random(11);
        double sum = 0;
        for (int draw = 0; draw < 200; draw++) {
            double[] x = IntStream.range(0, 17).mapToDouble(i -> -20 + 2 * i).toArray();
            double[] y = drawn(random);
            Arrays.setAll(y, i -> y[i] + 0.2 * random.nextGaussian());
            double misfit = new SmoothCurve(x, y, filled(17, 0.2)).misfit();
            sum += misfit * misfit / 200;
        }
        System.out.printf("mean square misfit of draws of the process: %.3f%n", sum);
        assertEquals(1, sum, 0.104);
    }

    /**
     * Three values at 0, 1 and 2 dB leave one degree of freedom, their second difference y₀ − 2y₁ +
     * y₂. Its variance is 6σ² of noise, that of the bend, and what the third derivative brings
     * about: q²·(∫(1 − t²/2)² over the first decibel + ∫((2 − t)²/2)² over the second) = q²·(1 − ⅓
     * + 1/20 + 1/20). Two have none.
     */
    @Test
    void threeValuesHaveOneDegreeOfFreedom() {
        SmoothCurve curve =
                new SmoothCurve(new double[] {0, 1, 2}, new double[] {0, 1, 0}, filled(3, 0.1));
        double variance = 0.06 + Math.pow(SmoothCurve.CURVATURE, 2) + 0.04 * 0.04 * (2.0 / 3 + 0.1);
        assertEquals(2 / Math.sqrt(variance), curve.misfit(), 1e-6);
        SmoothCurve two = new SmoothCurve(new double[] {0, 2}, new double[] {0, 1}, filled(2, 0.1));
        assertEquals(0, two.misfit());
        assertEquals(0.1, two.deviation(0), 1e-6);
    }

    /** Seventeen values 2 dB apart of one draw. */
    private static double[] drawn(Random random) {
        double dx = 0.01;
        double bend = SmoothCurve.CURVATURE * random.nextGaussian();
        double slope = 2 * random.nextGaussian();
        double value = 10 * random.nextGaussian();
        double[] y = new double[17];
        for (int i = 0; i < y.length; i++) {
            y[i] = value;
            for (int k = 0; k < 200; k++) {
                bend += SmoothCurve.STIFFNESS * Math.sqrt(dx) * random.nextGaussian();
                slope += bend * dx;
                value += slope * dx;
            }
        }
        return y;
    }

    private static double[] filled(int n, double value) {
        double[] a = new double[n];
        Arrays.fill(a, value);
        return a;
    }

    /** K3 in dB re 1 %, 3 % near 0 dB: tanh(0.66·A·sin φ). */
    private static double k3OfTanh(double db) {
        double a = 0.66 * Math.pow(10, db / 20);
        return 20 * Math.log10(100 * Math.abs(component(a, 3) / component(a, 1)));
    }

    private static double component(double a, int order) {
        return new RombergIntegrator(1e-9, 1e-12, 6, 20)
                .integrate(
                        1 << 18, p -> Math.tanh(a * Math.sin(p)) * Math.sin(order * p), 0, Math.PI);
    }
}
