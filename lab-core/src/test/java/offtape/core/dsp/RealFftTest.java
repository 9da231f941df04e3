package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rounding grows with the square root of the number of stages; 1e-11 leaves a factor of 100. */
class RealFftTest {

    private static final double ROUNDING = 1e-11;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 8, 256, 4096})
    void agreesWithCommonsMath(int n) {
        double[] x = noise(n);
        Complex[] expected =
                new FastFourierTransformer(DftNormalization.STANDARD)
                        .transform(x, TransformType.FORWARD);
        Spectrum spectrum = RealFft.ofSize(n).forward(x);
        assertEquals(n / 2 + 1, spectrum.bins());
        for (int k = 0; k < spectrum.bins(); k++) {
            assertEquals(expected[k].getReal(), spectrum.re(k), ROUNDING);
            assertEquals(expected[k].getImaginary(), spectrum.im(k), ROUNDING);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 5, 7, 12, 15, 211, 243, 1000, 1009})
    void agreesWithTheDefiningSum(int n) {
        double[] x = noise(n);
        Spectrum spectrum = RealFft.ofSize(n).forward(x);
        for (int k = 0; k < spectrum.bins(); k++) {
            double re = 0;
            double im = 0;
            for (int j = 0; j < n; j++) {
                double angle = 2 * Math.PI * ((long) j * k % n) / n;
                re += x[j] * Math.cos(angle);
                im -= x[j] * Math.sin(angle);
            }
            assertEquals(re, spectrum.re(k), ROUNDING);
            assertEquals(im, spectrum.im(k), ROUNDING);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 9, 16, 17, 1000, 1009, 1 << 17})
    void inverseReturnsTheSamples(int n) {
        double[] x = noise(n);
        RealFft fft = RealFft.ofSize(n);
        assertArrayEquals(x, fft.inverse(fft.forward(x)), 1e-13);
    }

    /** An impulse at j = 1: X(k) = exp(−2πik/n). */
    @Test
    void impulseTurnsWithFrequency() {
        Spectrum spectrum = RealFft.ofSize(16).forward(new double[] {0, 1});
        for (int k = 0; k <= 8; k++) {
            assertEquals(Math.cos(Math.PI * k / 8), spectrum.re(k), 1e-15);
            assertEquals(-Math.sin(Math.PI * k / 8), spectrum.im(k), 1e-15);
        }
    }

    /** a·sin(2π·5j/n) has X(5) = −i·a·n/2 and nothing elsewhere. */
    @Test
    void sineFillsOneBin() {
        int n = 96;
        double[] x =
                IntStream.range(0, n)
                        .mapToDouble(j -> 3 * Math.sin(2 * Math.PI * 5 * j / n))
                        .toArray();
        Spectrum spectrum = RealFft.ofSize(n).forward(x);
        assertEquals(-144, spectrum.im(5), ROUNDING);
        assertEquals(144 * 144, spectrum.power(5), 1e-9);
        assertEquals(144, spectrum.magnitude(5), ROUNDING);
        assertEquals(0, spectrum.re(5), ROUNDING);
        assertEquals(0, spectrum.magnitude(4), ROUNDING);
        assertEquals(500, spectrum.binHz(48000), 0);
    }

    @ParameterizedTest
    @ValueSource(ints = {64, 101})
    void parsevalHolds(int n) {
        double[] x = noise(n);
        Spectrum spectrum = RealFft.ofSize(n).forward(x);
        double sum = spectrum.power(0);
        for (int k = 1; k < spectrum.bins(); k++) {
            sum += (2 * k == n ? 1 : 2) * spectrum.power(k);
        }
        double squares = IntStream.range(0, n).mapToDouble(j -> x[j] * x[j]).sum();
        assertEquals(squares, sum / n, ROUNDING);
    }

    /** (1, 2, 3) * (4, 5) = (4, 13, 22, 15), multiplied out by hand. */
    @Test
    void productIsConvolution() {
        RealFft fft = RealFft.ofSize(4);
        Spectrum product =
                fft.forward(new double[] {1, 2, 3}).times(fft.forward(new double[] {4, 5}));
        assertArrayEquals(new double[] {4, 13, 22, 15}, fft.inverse(product), 1e-13);
    }

    /** A copy two samples late correlates with its original at lag 2. */
    @Test
    void crossSpectrumFindsTheLag() {
        RealFft fft = RealFft.ofSize(8);
        Spectrum late = fft.forward(new double[] {0, 0, 1, -1});
        Spectrum original = fft.forward(new double[] {1, -1});
        double[] correlation = fft.inverse(late.timesConjugate(original));
        assertArrayEquals(new double[] {0, -1, 2, -1, 0, 0, 0, 0}, correlation, 1e-13);
        double[] halved = fft.inverse(late.times(k -> 0.5));
        assertArrayEquals(new double[] {0, 0, 0.5, -0.5, 0, 0, 0, 0}, halved, 1e-13);
    }

    @Test
    void spectrumOfPartsDropsWhatARealSequenceCannotHave() {
        Spectrum parts = Spectrum.of(4, new double[] {4, 0, 0}, new double[] {7, 0, 7});
        assertArrayEquals(new double[] {1, 1, 1, 1}, RealFft.ofSize(4).inverse(parts), 1e-15);
        assertEquals(0, parts.im(0), 0);
        assertEquals(0, parts.im(2), 0);
    }

    /** An odd number of samples has no bin at half the rate: that of the last bin is kept. */
    @Test
    void spectrumOfAnOddNumberKeepsItsLastBin() {
        Spectrum parts = Spectrum.of(5, new double[] {1, 2, 3}, new double[] {4, 5, 6});
        assertEquals(0, parts.im(0), 0);
        assertEquals(5, parts.im(1), 0);
        assertEquals(6, parts.im(2), 0);
        assertEquals(3, parts.re(2), 0);
        assertEquals(5, parts.length());
    }

    @Test
    void oneSampleHasOneBin() {
        Spectrum one = Spectrum.of(1, new double[] {3}, new double[1]);
        assertArrayEquals(new double[] {3}, RealFft.ofSize(1).inverse(one), 0);
        assertThrows(
                IllegalArgumentException.class, () -> Spectrum.of(0, new double[1], new double[1]));
    }

    @Test
    void aPartOfAnArrayIsFollowedByZeros() {
        RealFft fft = RealFft.ofSize(4);
        double[] x = {9, 2, 3, 4, 9};
        assertArrayEquals(new double[] {2, 3, 4, 0}, fft.inverse(fft.forward(x, 1, 3)), 1e-14);
        assertArrayEquals(new double[] {9, 2, 3, 4, 9}, x, 0);
        assertEquals(4, fft.size());
    }

    @Test
    void nextPowerOfTwoCoversItsRange() {
        int[] from = {1, 2, 3, 4, 5, 1023, 1024, 1025, 1 << 30};
        int[] to = {1, 2, 4, 4, 8, 1024, 1024, 2048, 1 << 30};
        assertArrayEquals(to, IntStream.of(from).map(RealFft::nextPowerOfTwo).toArray());
        assertThrows(IllegalArgumentException.class, () -> RealFft.nextPowerOfTwo(0));
        assertThrows(IllegalArgumentException.class, () -> RealFft.nextPowerOfTwo((1 << 30) + 1));
    }

    @Test
    void refusesWhatDoesNotFit() {
        RealFft fft = RealFft.ofSize(4);
        Spectrum other = RealFft.ofSize(8).forward(new double[8]);
        assertThrows(IllegalArgumentException.class, () -> RealFft.ofSize(0));
        assertThrows(IllegalArgumentException.class, () -> fft.forward(new double[5]));
        assertThrows(IllegalArgumentException.class, () -> fft.inverse(other));
        assertThrows(IllegalArgumentException.class, () -> fft.forward(new double[4]).times(other));
        String said =
                assertThrows(
                                IllegalArgumentException.class,
                                () -> Spectrum.of(4, new double[2], new double[3]))
                        .getMessage();
        assertEquals("4 samples have 3 bins, not 2 and 3", said);
        assertThrows(
                IllegalArgumentException.class, () -> Spectrum.of(4, new double[3], new double[2]));
    }

    private static double[] noise(int n) {
        return new Random(n).doubles(n, -1, 1).toArray();
    }
}
