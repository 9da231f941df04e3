package offtape.core.dsp;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import java.util.stream.IntStream;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PowerDensityTest {

    private static final double RATE = 48_000;

    /**
     * White noise of variance σ² has the one-sided density 2σ²/fs. Some 230 half-overlapping pieces
     * (about 0.95 of them independent for this window) of 2048 bins leave an error of the mean of
     * about 1/√(230 · 2048) = 0.15 %; four times that is allowed.
     */
    @Test
    void whiteNoiseHasItsDensity() {
        double[] x = gaussian(480_000, 0.1, 11);
        PowerDensity density = PowerDensity.of(x, RATE, 4096);
        double expected = 2 * 0.01 / RATE;
        assertEquals(expected, density.mean(100, 23_900), 0.006 * expected);
        assertEquals(0.01, density.power(0, RATE / 2, f -> 1), 0.006 * 0.01);
    }

    /** A gain of ¼ above 12 kHz and 1 below passes 1/2 + 1/8 of the power of white noise. */
    @Test
    void powerTakesAGain() {
        double[] x = gaussian(480_000, 1, 12);
        PowerDensity density = PowerDensity.of(x, RATE, 4096);
        assertEquals(0.625, density.power(0, 24_000, f -> f < 12_000 ? 1 : 0.25), 0.006);
    }

    /** A sine of peak A has the power A²/2, wherever it lies between the bins. */
    @ParameterizedTest
    @ValueSource(doubles = {1000, 1003.7, 1005.859375, 9999.9})
    void sineHasItsPower(double hz) {
        double[] x = sine(hz, 0.5, 48_000);
        PowerDensity density = PowerDensity.of(x, RATE, 4096);
        // Hann skirts fall as the third power of the distance: 1e-5 beyond 20 bins.
        assertEquals(0.125, density.power(hz - 240, hz + 240, f -> 1), 0.125 * 3e-4);
    }

    /**
     * The density on a bin that holds a sine is its power over the equivalent noise bandwidth, 1.50
     * bins for the Hann window.
     */
    @Test
    @Source("F. J. Harris, Proc. IEEE 66(1), 1978, table I: Hann, 1.50 bins")
    void noiseBandwidthOfTheWindow() {
        int n = 4096;
        double hz = 100 * RATE / n;
        PowerDensity density = PowerDensity.of(sine(hz, 1, n), RATE, n);
        assertPublished(1.50, 0.5 / density.at(100) / density.binHz(), 0.005, 0, "bins");
    }

    /**
     * Parseval: for one piece the density times the bin width sums to the mean square of the
     * windowed samples over that of the window, 3/8.
     */
    @Test
    void densitySumsToTheMeanSquare() {
        int n = 1024;
        double[] x = gaussian(n, 1, 13);
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double window = Math.pow(Math.sin(Math.PI * (i + 0.5) / n), 2);
            squares += Math.pow(window * x[i], 2) / n;
        }
        PowerDensity density = PowerDensity.of(x, RATE, n);
        double sum = 0;
        for (int k = 0; k < density.bins(); k++) {
            sum += density.at(k) * density.binHz();
        }
        assertEquals(squares / 0.375, sum, 1e-12);
    }

    /** Density 1/binHz² per bin: a band counts bins by the share that lies inside. */
    @Test
    void bordersCountByTheirShare() {
        PowerDensity density = PowerDensity.of(gaussian(64, 1, 14), 64, 64);
        double whole = density.power(9.5, 10.5, f -> 1);
        assertEquals(density.at(10), whole, 1e-15);
        assertEquals(0.3 * density.at(10), density.power(9.8, 10.1, f -> 1), 1e-15);
        assertEquals(
                0.5 * density.at(10) + 0.25 * density.at(11),
                density.power(10, 10.75, f -> 1),
                1e-15);
        assertEquals(0, density.power(10, 10, f -> 1), 0);
        assertEquals(0, density.power(40, 50, f -> 1), 0);
    }

    @Test
    void shortSoundsTakeSmallTransforms() {
        assertEquals(257, PowerDensity.of(new double[700], RATE, 4096).bins());
        assertEquals(9, PowerDensity.of(new double[16], RATE, 4096).bins());
        assertThrows(
                IllegalArgumentException.class, () -> PowerDensity.of(new double[15], RATE, 4096));
    }

    private static double[] gaussian(int n, double deviation, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, n).mapToDouble(i -> deviation * random.nextGaussian()).toArray();
    }

    private static double[] sine(double hz, double peak, int n) {
        return IntStream.range(0, n)
                .mapToDouble(i -> peak * Math.sin(2 * Math.PI * hz * i / RATE))
                .toArray();
    }
}
