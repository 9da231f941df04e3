package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
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
