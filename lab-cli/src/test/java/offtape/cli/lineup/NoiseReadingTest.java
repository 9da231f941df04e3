package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

/** Noise of known power. */
class NoiseReadingTest {

    private static final int RATE = 48_000;

    /**
     * White noise of 0.001 rms: 20 Hz to 20 kHz hold 19 980 of 24 000 Hz; a sine has half its
     * peak².
     */
    @Test
    void whiteNoiseReadsItsShareOfTheBand() {
        Random random = new Random(7);
        double[] x = new double[40 * RATE];
        Arrays.setAll(x, i -> 0.001 * random.nextGaussian() + 0.01);
        double expected = -60 + 10 * Math.log10(2 * 19_980 / 24_000.0);
        assertEquals(expected, NoiseReading.of(x, RATE).unweightedDbfs(), 0.05);
    }

    @Test
    @Source("IEC 61672-1:2013, Table 3: weighting A is 0 dB at 1 kHz and -19.1 dB at 100 Hz")
    void weightingAIsThatOfTheStandard() {
        assertEquals(-40, of(1000).unweightedDbfs(), 0.01);
        assertEquals(-40, of(1000).aWeightedDbfs(), 0.01);
        assertEquals(-59.1, of(100).aWeightedDbfs(), 0.15);
    }

    private static NoiseReading of(double hz) {
        double[] x = new double[RATE];
        Arrays.setAll(x, i -> 0.01 * Math.sin(2 * Math.PI * hz * i / RATE));
        return NoiseReading.of(x, RATE);
    }
}
