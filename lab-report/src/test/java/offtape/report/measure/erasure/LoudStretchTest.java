package offtape.report.measure.erasure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.dsp.Baseband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pointers at 40 a second: a block of 0.1 s has four. */
class LoudStretchTest {

    private static final double RATE_HZ = 40;

    /** One amplitude a block, from two seconds on. */
    private static Baseband blocks(double... amplitudes) {
        double[] re = new double[4 * amplitudes.length];
        for (int k = 0; k < re.length; k++) {
            re[k] = amplitudes[k / 4];
        }
        return new Baseband(re, new double[re.length], RATE_HZ, 2);
    }

    private static void assertStretch(double from, double to, Baseband... channels) {
        LoudStretch found = LoudStretch.of(List.of(channels));
        assertEquals(from, found.fromSeconds(), 1e-9);
        assertEquals(to, found.toSeconds(), 1e-9);
    }

    @Test
    void isTheLongestRunOfLoudBlocks() {
        assertStretch(2.3, 2.6, blocks(0, 1, 0, 1, 1, 1, 0, 1, 1, 0));
        assertStretch(2.0, 2.2, blocks(1, 1, 0, 0, 1));
        assertStretch(2.1, 2.4, blocks(0, 1, 1, 1));
        assertStretch(2.0, 2.2, blocks(1, 1, 0, 1, 1));
    }

    /** A quarter of the loudest block's power is not loud any more: −6.02 dB. */
    @ParameterizedTest
    @CsvSource({"0.5, 2.2", "0.501, 2.3"})
    void aQuarterOfThePowerIsNotLoud(double amplitude, double to) {
        assertStretch(2.0, to, blocks(1, 1, amplitude, 0, 0));
    }

    /** Left sounds in its second half, right in its first; both count by their power. */
    @Test
    void channelsCountTogether() {
        assertStretch(2.0, 2.4, blocks(0, 0, 1, 1, 0), blocks(1, 1, 0, 0, 0));
        assertStretch(2.1, 2.2, blocks(0, 2, 0, 0.9, 0.9), blocks(0, 2, 0, 0.9, 0.9));
    }

    /** What is left over at the end is no block; of nothing there is no stretch. */
    @Test
    void onlyWholeBlocksCount() {
        double[] re = {1, 1, 1, 1, 1, 1, 1};
        assertStretch(2.0, 2.1, new Baseband(re, new double[7], RATE_HZ, 2));
        assertStretch(2.0, 2.0, blocks(0, 0, 0));
        assertStretch(2.0, 2.0, new Baseband(new double[0], new double[0], RATE_HZ, 2));
    }
}
