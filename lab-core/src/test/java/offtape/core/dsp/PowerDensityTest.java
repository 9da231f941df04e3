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

    /**
     * Pieces of 16 samples begin at 0, 8 and 16 of 32. A single 1 on sample 12 lies on places 12
     * and 4 of the first two, where the window is sin²(12.5π/16) and sin²(4.5π/16): squared and
     * summed over three pieces, times 2 for the second side, over Σ w² = 3·16/8 and the rate.
     */
    @Test
    void piecesOverlapByHalf() {
        double[] x = new double[32];
        x[12] = 1;
        PowerDensity density = PowerDensity.of(x, 100, 16);
        double squares =
                Math.pow(Math.sin(Math.PI * 12.5 / 16), 4)
                        + Math.pow(Math.sin(Math.PI * 4.5 / 16), 4);
        for (int k = 1; k < 8; k++) {
            assertEquals(2 * squares / 3 / 6 / 100, density.at(k), 1e-16);
        }
        assertEquals(squares / 3 / 6 / 100, density.at(0), 1e-16);
        assertEquals(squares / 3 / 6 / 100, density.at(8), 1e-16);
    }

    /**
     * Bins 1 Hz apart, the last at 32 Hz and reaching to 32.5: the mean over a band that goes on
     * beyond counts what there is; a band narrower than a bin takes the bin's width below its top.
     */
    @Test
    void meansBesideTheEndsOfTheSpectrum() {
        PowerDensity density = PowerDensity.of(gaussian(64, 1, 15), 64, 64);
        double last = density.at(32);
        assertEquals((density.at(31) + last) / 2, density.mean(30.5, 100), 1e-15);
        assertEquals(last, density.mean(50, 60), 1e-15);
        assertEquals(
                0.25 * density.at(20) + 0.75 * density.at(21), density.mean(21.2, 21.25), 1e-15);
        assertEquals((density.at(0) + density.at(1)) / 2, density.mean(-1, 1), 1e-15);
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
