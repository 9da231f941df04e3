package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 1024 values, 1024 a second: bins 1 Hz apart. Hann's window has Σ w² = 3/8 · 1024 = 384. */
class RestDensityTest {

    private static final int N = 1024;

    private static double[] impulse(int length) {
        double[] x = new double[length];
        x[length / 2] = 3;
        return x;
    }

    /** An impulse in the middle, where the window is 1, has |X|² = 9 at every rate. */
    private static final double EVEN = 2 * 9.0 / (1024 * 384);

    private static double[] sine(int hz) {
        double[] x = new double[N];
        Arrays.setAll(x, i -> 2 * Math.sin(2 * Math.PI * hz * i / N));
        return x;
    }

    @Test
    void anImpulseHasOneDensityAtAllRates() {
        RestDensity density = RestDensity.of(impulse(N), N, f -> 1, f -> 0);
        for (double hz : new double[] {-3, 0, 0.4, 1, 99.5, 511, 512, 513, 4000}) {
            assertEquals(EVEN, density.at(hz), 1e-5 * EVEN, hz + " Hz");
        }
    }

    /** What a filter has halved was twice as much, noise that came in behind it is taken off. */
    @Test
    void gainAndNoiseAreUndone() {
        RestDensity density = RestDensity.of(impulse(N), N, f -> 0.5, f -> 0.25 * EVEN);
        assertEquals(1.5 * EVEN, density.at(100), 2e-5 * EVEN);
    }

    /** Of what drowns in noise a fiftieth of the noise is told, before the gain is undone. */
    @Test
    void whatDrownsInNoiseIsNotNothing() {
        RestDensity density = RestDensity.of(impulse(N), N, f -> 0.5, f -> 2 * EVEN);
        assertEquals(0.02 * 2 * EVEN / 0.5, density.at(100), 1e-9 * EVEN);
        RestDensity silent = RestDensity.of(new double[N], N, f -> 1, f -> 0);
        assertTrue(silent.at(100) > 0 && silent.at(100) < 1e-300);
    }

    /**
     * A sine of peak 2 has the power 2, of which Hann's window puts 1/6, 4/6 and 1/6 into bins 199
     * to 201. The mean reaches 6 % of the rate to either side, rounded up: 12 bins at 188 to 200
     * Hz, 13 up to 216 Hz.
     */
    @ParameterizedTest
    @CsvSource({
        "186, 0, 25",
        "187, 1, 25",
        "188, 5, 25",
        "189, 6, 25",
        "200, 6, 25",
        "201, 6, 27",
        "212, 6, 27",
        "213, 5, 27",
        "214, 1, 27",
        "215, 0, 27",
    })
    void theMeanIsAsWideAsTheRateAsks(double hz, int sixths, int bins) {
        RestDensity density = RestDensity.of(sine(200), N, f -> 1, f -> 0);
        assertEquals(2.0 * sixths / 6 / bins, density.at(hz), 1e-12);
    }

    /** At slow rates it reaches 4 bins, and never to 0 Hz: 3 to 5 Hz are seen from 0 to 9 Hz. */
    @ParameterizedTest
    @CsvSource({
        "0, 5, 4",
        "1, 6, 5",
        "2, 6, 6",
        "4, 6, 8",
        "5, 6, 9",
        "7, 6, 9",
        "8, 5, 9",
        "9, 1, 9",
        "10, 0, 9",
    })
    void slowRatesTakeAFewBins(double hz, int sixths, int bins) {
        RestDensity density = RestDensity.of(sine(4), N, f -> 1, f -> 0);
        assertEquals(2.0 * sixths / 6 / bins, density.at(hz), 1e-12);
    }

    /** Towards half the rate there are fewer bins: at 512 Hz those from 512 − 31 on. */
    @Test
    void theLastBinsTakeWhatThereIs() {
        RestDensity density = RestDensity.of(sine(490), N, f -> 1, f -> 0);
        assertEquals(2.0 / 32, density.at(512), 1e-12);
    }

    /** Halfway between two bins lies the mean of both. */
    @Test
    void betweenBinsItRunsStraight() {
        RestDensity density = RestDensity.of(sine(200), N, f -> 1, f -> 0);
        assertEquals(2.0 / 25 * (0.75 * 5 + 0.25 * 6) / 6, density.at(188.25), 1e-12);
    }

    /**
     * Of 768 values in a transform of 1024 four resolved widths are 5.33 bins, so 6. The gain is
     * three times as much above 56.5 Hz: 50 Hz sees none of that, 51 Hz one of its 13 bins.
     */
    @Test
    void aShortStretchResolvesLess() {
        double even = 2 * 9.0 / (1024 * 3.0 / 8 * 768);
        RestDensity density = RestDensity.of(impulse(768), N, f -> f < 56.5 ? 1 : 3, f -> 0);
        assertEquals(even, density.at(50), 1e-4 * even);
        assertEquals(even * 13 / 15, density.at(51), 1e-4 * even);
        assertEquals(even / 3, density.at(63), 1e-4 * even);
    }
}
