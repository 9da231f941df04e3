package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.junit.jupiter.api.Test;

class ComplexFftTest {

    @Test
    void agreesWithCommonsMath() {
        int n = 512;
        double[] x = new Random(1).doubles(2 * n, -1, 1).toArray();
        Complex[] samples = new Complex[n];
        for (int j = 0; j < n; j++) {
            samples[j] = new Complex(x[2 * j], x[2 * j + 1]);
        }
        Complex[] expected =
                new FastFourierTransformer(DftNormalization.STANDARD)
                        .transform(samples, TransformType.FORWARD);
        ComplexFft.ofSize(n).forward(x);
        for (int k = 0; k < n; k++) {
            assertEquals(expected[k].getReal(), x[2 * k], 1e-11);
            assertEquals(expected[k].getImaginary(), x[2 * k + 1], 1e-11);
        }
    }

    /** exp(2πi·3j/n) is a line of height n in bin 3 alone, also for a length with no factor two. */
    @Test
    void turningPhasorFillsOneBin() {
        int n = 15;
        double[] x = new double[2 * n];
        for (int j = 0; j < n; j++) {
            x[2 * j] = Math.cos(2 * Math.PI * 3 * j / n);
            x[2 * j + 1] = Math.sin(2 * Math.PI * 3 * j / n);
        }
        double[] line = new double[2 * n];
        line[6] = n;
        double[] original = x.clone();
        ComplexFft fft = ComplexFft.ofSize(n);
        fft.forward(x);
        assertArrayEquals(line, x, 1e-12);
        fft.inverse(x);
        assertArrayEquals(original, x, 1e-13);
        assertEquals(n, fft.size());
    }

    /** A single point is its own spectrum. */
    @Test
    void oneSampleStays() {
        double[] x = {3, -4};
        ComplexFft.ofSize(1).forward(x);
        assertArrayEquals(new double[] {3, -4}, x, 1e-15);
    }

    @Test
    void refusesOtherLengths() {
        assertThrows(IllegalArgumentException.class, () -> ComplexFft.ofSize(0));
        ComplexFft fft = ComplexFft.ofSize(4);
        String said =
                assertThrows(IllegalArgumentException.class, () -> fft.forward(new double[4]))
                        .getMessage();
        assertEquals("4 complex samples are 8 numbers, not 4", said);
        assertThrows(IllegalArgumentException.class, () -> fft.inverse(new double[9]));
    }
}
