package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The mark is found where it was put. */
class MarkTest {

    private static final int RATE = 48_000;

    private static double[] sound(int seed, double noise, int at, double gain) {
        double[] mark = Mark.samples(RATE);
        Random random = new Random(seed);
        double[] x = new double[2 * RATE];
        for (int i = 0; i < x.length; i++) {
            int k = i - at;
            x[i] = noise * random.nextGaussian() + (k >= 0 && k < mark.length ? gain * mark[k] : 0);
        }
        return x;
    }

    @Test
    void itIsFoundToTheSample() {
        double[] mark = Mark.samples(RATE);
        assertEquals(12_345, Mark.find(sound(1, 0, 12_345, 0.1), mark).orElseThrow(), 1e-6);
        assertEquals(12_345, Mark.find(sound(1, 0, 12_345, -0.02), mark).orElseThrow(), 1e-6);
    }

    /** Noise as strong as the mark itself. */
    @Test
    void itIsFoundInNoise() {
        assertEquals(
                40_000,
                Mark.find(sound(2, 0.07, 40_000, 0.1), Mark.samples(RATE)).orElseThrow(),
                1);
    }

    @Test
    void itIsNotFoundWhereItIsNot() {
        double[] mark = Mark.samples(RATE);
        assertTrue(Mark.find(sound(3, 0.1, 0, 0), mark).isEmpty());
        assertTrue(Mark.find(new double[2 * RATE], mark).isEmpty());
        assertTrue(Mark.find(new double[100], mark).isEmpty());
    }
}
