package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LowBandTest {

    private static final double RATE = 100;

    /** A sine under Gauss's bell about the middle, which is 0.05 Hz wide to each side. */
    private static double[] bell(int count, double hz) {
        double[] x = new double[count];
        Arrays.setAll(x, i -> value((i - (count - 1) / 2.0) / RATE, hz));
        return x;
    }

    private static double value(double t, double hz) {
        return Math.exp(-t * t / 20) * Math.cos(2 * Math.PI * hz * t + 0.4);
    }

    /**
     * For lines up to 1 Hz all up to 2 Hz passes and nothing from 2.625 Hz on. 100 Hz by 16, the
     * last number that leaves 6.25 Hz, is the rate. 4001 samples leave (4001 − 1)/16 + 1 = 251
     * about the same middle.
     */
    @ParameterizedTest
    @CsvSource({"0.3, 1", "1.7, 1", "2.925, 0", "5, 0"})
    void whatIsSlowStaysInItsPlace(double hz, double gain) {
        Stretch low = LowBand.of(bell(4001, hz), RATE, 1);
        assertEquals(6.25, low.rateHz(), 1e-12);
        assertEquals(251, low.size());
        for (int i = 0; i < low.size(); i++) {
            double expected = gain * value(low.at(i), hz);
            assertEquals(expected, low.samples()[i], 1e-6, "sample " + i);
        }
    }

    /** Between the edges the gain falls as a cosine does: by half in the middle, 2.3125 Hz. */
    @Test
    void theSlopeIsEven() {
        Stretch low = LowBand.of(bell(4001, 2.3125), RATE, 1);
        assertEquals(0.5 * Math.cos(0.4), low.samples()[125], 0.002, "in the middle of the bell");
        Stretch upper = LowBand.of(bell(4001, 2.15625), RATE, 1);
        double quarter = 0.5 + 0.5 * Math.sqrt(0.5);
        assertEquals(quarter * Math.cos(0.4), upper.samples()[125], 0.015, "a quarter down");
    }

    /**
     * 4009 samples: the last that is left, number 4000, has eight behind it, of which four are put
     * before the first.
     */
    @Test
    void whatIsLeftLiesAboutTheSameMiddle() {
        Stretch low = LowBand.of(bell(4009, 0.7), RATE, 1);
        assertEquals(251, low.size());
        for (int i = 0; i < low.size(); i++) {
            assertEquals(value(low.at(i), 0.7), low.samples()[i], 1e-6, "sample " + i);
        }
    }

    /** A rate of 12.49 Hz for lines up to 1 Hz cannot be halved: every sample is kept. */
    @Test
    void aLowRateIsKept() {
        Stretch low = LowBand.of(new double[300], 12.49, 1);
        assertEquals(300, low.size());
        assertEquals(12.49, low.rateHz(), 0);
        assertEquals(150, LowBand.of(new double[300], 12.5, 1).size());
        assertEquals(300, LowBand.of(new double[300], 3, 1).size(), "a rate below twice the band");
    }
}
