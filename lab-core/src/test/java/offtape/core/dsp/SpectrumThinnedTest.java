package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sound of 48 samples of which only some are kept. */
class SpectrumThinnedTest {

    private static final int N = 48;

    private static Spectrum of(int cycles, double shift) {
        double[] x =
                IntStream.range(0, N)
                        .mapToDouble(i -> Math.cos(2 * Math.PI * cycles * i / N + shift))
                        .toArray();
        return RealFft.ofSize(N).forward(x);
    }

    /** Every fourth of 48 samples: up to 5 cycles stay, 6 are half the rate, 7 lie above it. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 5, 6, 7, 23, 24})
    void onlyWhatLiesBelowHalfTheRateStays(int cycles) {
        double[] expected =
                IntStream.range(0, N / 4)
                        .mapToDouble(
                                i ->
                                        cycles < 6
                                                ? Math.cos(2 * Math.PI * cycles * 4 * i / N + 0.4)
                                                : 0)
                        .toArray();
        Spectrum thinned = of(cycles, 0.4).thinned(4);
        assertEquals(12, thinned.length());
        assertArrayEquals(expected, RealFft.ofSize(12).inverse(thinned), 1e-14);
    }

    /** Each sample kept: all below half the rate is as it was. */
    @Test
    void oneLeavesAllSamples() {
        Spectrum whole = of(5, 1);
        Spectrum same = whole.thinned(1);
        assertEquals(N, same.length());
        assertEquals(whole.re(5), same.re(5), 0);
        assertEquals(whole.im(5), same.im(5), 0);
    }

    /** 48 / 16 would leave three, an odd number; 5 does not divide. */
    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 5, 16, 48, 96})
    void refusesWhatDoesNotDivide(int step) {
        Spectrum whole = of(1, 0);
        assertThrows(IllegalArgumentException.class, () -> whole.thinned(step));
    }
}
