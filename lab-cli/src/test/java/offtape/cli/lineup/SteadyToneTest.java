package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A tape's tone is found without its frequency being known. */
class SteadyToneTest {

    private static final int RATE = 48_000;

    @ParameterizedTest
    @ValueSource(doubles = {63.2, 315, 997.4, 3150.3, 9876.5, 16_000})
    void itsFrequencyIsFound(double hz) {
        Random random = new Random(1);
        double[] x = new double[RATE];
        Arrays.setAll(
                x,
                i -> 0.1 * Math.sin(2 * Math.PI * hz * i / RATE) + 0.001 * random.nextGaussian());
        assertEquals(hz, SteadyTone.find(new double[][] {x, x}, RATE).orElseThrow(), 0.3);
    }

    @Test
    void noiseAndSilenceAreNoTone() {
        Random random = new Random(2);
        double[] x = random.doubles(RATE, -1, 1).toArray();
        assertTrue(SteadyTone.find(new double[][] {x}, RATE).isEmpty());
        assertTrue(SteadyTone.find(new double[][] {new double[RATE]}, RATE).isEmpty());
    }
}
