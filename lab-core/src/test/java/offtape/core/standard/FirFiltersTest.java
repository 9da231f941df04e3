package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.math3.util.MathArrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FirFiltersTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 14, 15, 16, 200})
    void blocksAddUpToTheConvolution(int length) {
        double[] taps = new Random(1).doubles(5, -1, 1).toArray();
        double[] x = new Random(2).doubles(length, -1, 1).toArray();
        double[] whole = MathArrays.convolve(x, taps);
        double[] causal = new double[length];
        double[] centred = new double[length];
        System.arraycopy(whole, 0, causal, 0, length);
        System.arraycopy(whole, 2, centred, 0, length);
        BlockFilter filter = new BlockFilter(taps);
        assertArrayEquals(causal, filter.apply(x), 1e-14);
        assertArrayEquals(causal, Signals.through(filter.start(), x), 1e-14);
        assertArrayEquals(centred, Signals.through(filter.startCentred(), x), 1e-14);
    }

    /**
     * H(z) = 1 − 0.5/z has its zero inside the unit circle, so it is of minimum phase: from its
     * magnitude alone come the taps 1, −0.5, 0, 0 …; |H|² = 1.25 − cos ω.
     */
    @Test
    void recoversAKnownMinimumPhaseResponse() {
        double fs = 100;
        double[] h =
                MinimumPhase.impulseResponse(
                        f -> 10 * Math.log10(1.25 - Math.cos(2 * Math.PI * f / fs)), fs, 4096, 8);
        assertEquals(1, h[0], 1e-6);
        assertEquals(-0.5, h[1], 1e-6);
        for (int j = 2; j < h.length; j++) {
            assertEquals(0, h[j], 1e-6);
        }
    }
}
