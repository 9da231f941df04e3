package offtape.cli.realign;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Arrays;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;

/** Samples at which a sound was cut off. */
class FlatTopsTest {

    private static long[] count(double[]... x) {
        return FlatTops.count(new MemoryAudio("sound", 48_000, x));
    }

    @Test
    void runsOfThreeAtTheLargestValueCount() {
        double[] cut = {0, 1, 1, 1, 0.2, -1, -1, -1, -1, 0, 1, 1, 0};
        double[] clean = {0, 0.5, 0.9, 0.99, 0.9, 0.5, 0, -0.5, -0.9, -0.99, -0.9, -0.5, 0};
        assertArrayEquals(new long[] {7, 0}, count(cut, clean));
    }

    @Test
    void whatIsFlatBelowTheLargestValueOrFarFromFullScaleDoesNot() {
        assertArrayEquals(new long[] {0}, count(new double[] {0.985, 0.985, 0.985, 0, 1, 0}));
        assertArrayEquals(new long[] {0}, count(new double[] {0.5, 0.5, 0.5, 0.5, 0}));
    }

    @Test
    void aRunThatGoesOnFromBlockToBlockIsOne() {
        double[] x = new double[40_000];
        Arrays.fill(x, 16_383, 16_386, -1);
        assertArrayEquals(new long[] {3}, count(x));
    }
}
