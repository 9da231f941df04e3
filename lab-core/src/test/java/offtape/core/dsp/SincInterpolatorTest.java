package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import offtape.core.unit.Decibels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SincInterpolatorTest {

    /** Against the sine itself at places drawn between the samples; −100 dB is the claim. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.05, 0.1, 0.2, 0.3, 0.4, 0.43, 0.45})
    void findsASineBetweenItsSamples(double shareOfRate) {
        double[] x = new double[400];
        for (int i = 0; i < x.length; i++) {
            x[i] = Math.cos(2 * Math.PI * shareOfRate * i + 0.7);
        }
        Random random = new Random(3);
        double worst = 0;
        for (int k = 0; k < 20_000; k++) {
            double place = 100 + 200 * random.nextDouble();
            double expected = Math.cos(2 * Math.PI * shareOfRate * place + 0.7);
            worst = Math.max(worst, Math.abs(SincInterpolator.at(x, place) - expected));
        }
        double db = Decibels.ofAmplitude(worst);
        System.out.printf("sinc interpolation at %.3f fs: worst %.1f dB%n", shareOfRate, db);
        assertTrue(db < -100, "error " + db + " dB");
    }

    @Test
    void givesTheSamplesThemselves() {
        double[] x = new Random(5).doubles(200).toArray();
        for (int i = 0; i < x.length; i++) {
            assertEquals(x[i], SincInterpolator.at(x, i), 1e-14);
        }
    }

    /** A single sample of 1 shows the kernel: sinc(½) = 2/π within the taper of the window. */
    @Test
    void countsSamplesOutsideAsZero() {
        double[] one = {1};
        assertEquals(2 / Math.PI, SincInterpolator.at(one, 0.5), 2e-3);
        assertEquals(2 / Math.PI, SincInterpolator.at(one, -0.5), 2e-3);
        assertEquals(0, SincInterpolator.at(one, 1000.5), 0);
        assertEquals(0, SincInterpolator.at(one, -1000.5), 0);
        assertEquals(0, SincInterpolator.at(new double[0], 0.5), 0);
    }

    /**
     * A sound with 50 zeros on either side is the same sound: near its ends each value must be that
     * of the longer one, wherever it lies between two rows of the table.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-3.7, -0.2, 0, 0.12345, 4.5003, 7.9991, 17.31, 19, 19.6, 23.0004})
    void soundThatEndsIsSoundWithZerosBehind(double place) {
        double[] x = new Random(8).doubles(20, -1, 1).toArray();
        double[] longer = new double[120];
        System.arraycopy(x, 0, longer, 50, x.length);
        double expected = SincInterpolator.at(longer, place + 50);
        assertEquals(expected, SincInterpolator.at(x, place), 1e-12);
        assertEquals(expected, SincInterpolator.at(x, new double[] {3, place})[1], 1e-12);
    }
}
