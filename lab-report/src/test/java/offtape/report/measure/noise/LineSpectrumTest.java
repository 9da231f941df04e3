package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Stretches of 4 s at 1024 Hz, whose lines lie a quarter of a hertz apart. */
class LineSpectrumTest {

    private static final int RATE = 1024;

    private static double[] sine(double hz, double peak) {
        double[] x = new double[4 * RATE];
        add(x, hz, peak);
        return x;
    }

    private static void add(double[] x, double hz, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.cos(2 * Math.PI * hz * i / RATE);
        }
    }

    /** A sine of peak 0.2 has a mean square of 0.02, on a line or between lines. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 100.0625, 100.1, 100.125, 99.9})
    void aSineHasItsMeanSquare(double hz) {
        LineSpectrum spectrum = new LineSpectrum(sine(hz, 0.2), RATE);
        assertEquals(0.02, spectrum.power(hz), 5e-5);
        assertEquals(0.02, spectrum.powerAround(hz, 2.5), 4e-4);
        assertEquals(hz, spectrum.highest(hz + 0.2, 1.5), 0.0313);
        assertEquals(0, spectrum.power(hz + 5), 1e-6);
    }

    /** Under Hann's window half a line off has (8/3π)² = 0.7205 of the power, a line off ¼. */
    @Test
    void aLineHasTheShapeOfItsWindow() {
        LineSpectrum spectrum = new LineSpectrum(sine(100, 0.2), RATE);
        assertEquals(0.02 * 0.7205, spectrum.power(100.125), 1e-5);
        assertEquals(0.02 * 0.7205, spectrum.power(99.875), 1e-5);
        assertEquals(0.005, spectrum.power(100.25), 1e-5);
        assertEquals(0.005, spectrum.power(99.75), 1e-5);
    }

    /**
     * What is beside a line to so many lines of either side counts, what is farther does not: a
     * line two lines away, but its foot, and one four lines away.
     */
    @Test
    void powerAroundEndsWhereItShould() {
        double[] x = sine(100, 0.2);
        add(x, 101.25, 0.2);
        assertEquals(0.02, new LineSpectrum(x, RATE).powerAround(100, 2.5), 4e-4);
        assertEquals(0.04, new LineSpectrum(x, RATE).powerAround(100.625, 5), 4e-4);
    }

    /** Reach is the same to either side: lines below that lie too far off do not count. */
    @Test
    void reachIsTheSameBelow() {
        double[] x = sine(100, 0.2);
        add(x, 98.75, 0.3);
        LineSpectrum spectrum = new LineSpectrum(x, RATE);
        assertEquals(0.02, spectrum.powerAround(100, 2.5), 4e-4);
        assertEquals(100, spectrum.highest(100, 3), 0.0313);
        assertEquals(98.75, spectrum.highest(100, 5.5), 0.0313);
    }

    @Test
    void theHighestLineIsSoughtWithinReach() {
        double[] x = sine(100, 0.2);
        add(x, 101, 0.3);
        LineSpectrum spectrum = new LineSpectrum(x, RATE);
        assertEquals(100, spectrum.highest(100.1, 1.5), 0.0313);
        assertEquals(101, spectrum.highest(100.5, 2.5), 0.0313);
    }

    /** A constant is no line, however near to 0 Hz one looks. */
    @Test
    void aConstantIsTakenOut() {
        double[] x = sine(10, 0.2);
        Arrays.setAll(x, i -> x[i] + 5);
        LineSpectrum spectrum = new LineSpectrum(x, RATE);
        assertEquals(0.02, spectrum.power(10), 1e-5);
        assertEquals(0, spectrum.power(0.1), 1e-5);
    }

    /** Of 30 s the 20 in the middle are taken. */
    @Test
    void longStretchesAreCutToTheirMiddle() {
        double[] x = new double[3000];
        Arrays.setAll(x, i -> i);
        LineSpectrum spectrum = new LineSpectrum(x, 100);
        assertEquals(20, spectrum.seconds());
        assertEquals(100, spectrum.rateHz());
        assertArrayEquals(Arrays.copyOfRange(x, 500, 2500), spectrum.samples());
    }

    /**
     * Every second line from 16 to 48 lines, which are 4 and 12 Hz, beside 100 Hz: those between
     * have half of each neighbour, so that all have the same power b²/2. The median of noise is ln
     * 2 of its mean. What is nearer or farther does not count.
     */
    @Test
    void noiseIsReadFromTheLinesBeside() {
        double[] x = sine(100, 1);
        for (int d = 15; d <= 49; d += 2) {
            add(x, 100 - d * 0.25, 0.01);
            add(x, 100 + d * 0.25, 0.01);
        }
        add(x, 102.5, 1);
        add(x, 115, 1);
        LineSpectrum spectrum = new LineSpectrum(x, RATE);
        assertEquals(5e-5 / Math.log(2), spectrum.noise(100), 2e-7);
    }

    /**
     * Where more than a tenth of the lines beside stand out, of 64 eight each side, their power
     * counts as the ninth decile, ln 10 of the mean; where fewer do, two, the median holds.
     */
    @ParameterizedTest
    @CsvSource({"8, true", "2, false"})
    void manyLinesBesideAreNoise(int lines, boolean noise) {
        double[] x = new double[4 * RATE];
        for (int d = 15; d <= 49; d += 2) {
            double peak = d >= 31 && d < 31 + lines ? 0.1 : 0.01;
            add(x, 100 - d * 0.25, peak);
            add(x, 100 + d * 0.25, peak);
        }
        double found = new LineSpectrum(x, RATE).noise(100);
        assertEquals(
                noise ? 5e-3 / Math.log(10) : 5e-5 / Math.log(2), found, (noise ? 2e-5 : 2e-7));
    }

    /** In a second lines lie 1 Hz apart, and noise is read from 5 to 24 of them. */
    @Test
    void inAShortStretchNoiseIsReadFromLinesFartherOff() {
        double[] x = new double[RATE];
        add(x, 100, 1);
        add(x, 96, 1);
        for (int d = 5; d <= 25; d += 2) {
            add(x, 100 - d, 0.01);
            add(x, 100 + d, 0.01);
        }
        double found = new LineSpectrum(x, RATE).noise(100);
        assertEquals(5e-5 / Math.log(2), found, 2e-6);
    }

    /** Lows are thinned out where the rate allows: their lines are what they are. */
    @ParameterizedTest
    @ValueSource(ints = {44_100, 8000, 5000})
    void lowsAreKept(int rateHz) {
        double[] x = new double[2 * rateHz];
        for (int i = 0; i < x.length; i++) {
            x[i] =
                    0.2 * Math.sin(2 * Math.PI * 50 * i / rateHz)
                            + 0.2 * Math.sin(2 * Math.PI * 700 * i / rateHz)
                            + 0.2 * Math.sin(2 * Math.PI * 2000 * i / rateHz);
        }
        LineSpectrum lows = LineSpectrum.ofLows(x, rateHz);
        assertEquals(0.02, lows.power(50), 1e-4);
        assertEquals(0.02, lows.power(700), 1e-4);
        assertEquals(2, lows.seconds(), 0.01);
        assertTrue(lows.rateHz() <= 8000);
    }
}
