package offtape.core.align;

import static offtape.core.align.HeardMark.RATE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a mark is looked for and what is not taken for it; a mark has 2000 frames here. */
class MarkSearchBoundsTest {

    private static final double PEAK = 0.06;

    private final MarkSearch search = new MarkSearch(RATE);

    private Optional<FoundMark> found(double[] x, long from, long to) {
        return search.find(new MemoryAudio("x", RATE, x), 0, from, to, PEAK);
    }

    private FoundMark found(double[] x) {
        return found(x, 0, x.length).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "3000, 5000, true",
        "3001, 6000, false",
        "2000, 4999, false",
        "2999, 5001, true",
        "3000, 7000, true",
        "500, 5000, true"
    })
    void aMarkLiesWhollyWithinAStretchOrIsNotThere(long from, long to, boolean isThere) {
        double[] x = new double[8000];
        HeardMark.add(x, RATE, 4000, 1, PEAK);
        Optional<FoundMark> mark = found(x, from, to);
        assertEquals(isThere, mark.isPresent());
        mark.ifPresent(m -> assertEquals(4000, m.frame(), 0.001));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.971, 1.029})
    void speedsOffByThreeInAHundredAreFound(double speed) {
        double[] x = new double[40_000];
        HeardMark.add(x, 48_000, 20_000, speed, PEAK);
        FoundMark mark =
                new MarkSearch(48_000)
                        .find(new MemoryAudio("x", 48_000, x), 0, 0, x.length, PEAK)
                        .orElseThrow();
        assertEquals(20_000, mark.frame(), 0.001);
        assertEquals(speed, mark.rate(), 1e-6);
    }

    /**
     * Long stretches are searched in pieces of 2¹⁸ frames; a mark that reaches from one into the
     * next is found, and a leak of it 40 dB down in another piece is not taken for it.
     */
    @Test
    void piecesOverlapByAMark() {
        double[] x = new double[270_000];
        HeardMark.add(x, RATE, 20_000, 1, PEAK / 100);
        HeardMark.add(x, RATE, (1 << 18) - 1030, 1, PEAK);
        assertEquals((1 << 18) - 1030, found(x).frame(), 0.001);
    }

    /**
     * −6 dB is more than a leak, so the first of two is the one; a fifth of a mark away it is not.
     */
    @Test
    void theFirstOfTwoIsTheOne() {
        double[] x = new double[10_000];
        HeardMark.add(x, RATE, 2500, 1, PEAK / 2);
        HeardMark.add(x, RATE, 7000, 1, PEAK);
        assertEquals(2500, found(x).frame(), 0.01);
        double[] near = new double[6000];
        HeardMark.add(near, RATE, 2600, 1, 0.7 * PEAK);
        HeardMark.add(near, RATE, 3000, 1, PEAK);
        assertEquals(3000, found(near).frame(), 2);
    }

    /**
     * White noise of variance s² gives a filter of energy E a mean power of 2s²E, and the greatest
     * of some ten thousand is about ln 10⁴ = 9 times that: with s = 0.3 and E = 470 about 800, as
     * much as a mark's (0.06 · 470)² = 795. Each explains but 9/1000 of its own stretch, though.
     */
    @Test
    void loudNoiseBeforeItIsNotTheMark() {
        double[] x = new double[16_000];
        Random random = new Random(5);
        for (int i = 0; i < 10_000; i++) {
            x[i] = 0.3 * random.nextGaussian();
        }
        HeardMark.add(x, RATE, 13_000, 1, PEAK);
        assertEquals(13_000, found(x).frame(), 0.001);
    }

    /**
     * A click within 20 ms of it, of four times its energy, leaves the mark a fifth of the sound.
     */
    @Test
    void aFifthOfTheSoundIsTheLeast() {
        double[] x = new double[6000];
        HeardMark.add(x, RATE, 3000, 1, PEAK);
        double size = Math.sqrt(HeardMark.energy(x));
        x[1960] = Math.sqrt(3.8) * size;
        assertTrue(found(x, 0, 6000).isPresent());
        x[1960] = Math.sqrt(4.2) * size;
        assertTrue(found(x, 0, 6000).isEmpty());
    }

    /**
     * Digital silence is where the mean square is under −180 dB of full scale: that of a mark of
     * peak p is 0.94/2 · p² at the most, as its edges take 0.015 s of the energy of each 0.25 s.
     */
    @Test
    void nothingIsLookedForInSilence() {
        double[] x = new double[6000];
        HeardMark.add(x, RATE, 3000, 1, 1.3e-9);
        assertTrue(found(x, 0, 6000).isEmpty());
        double[] louder = new double[6000];
        HeardMark.add(louder, RATE, 3000, 1, 1.6e-9);
        assertEquals(3000, found(louder).frame(), 0.001);
    }

    @Test
    void silenceIsNotInverted() {
        double[] x = new double[6000];
        HeardMark.add(x, RATE, 3000, 1, PEAK);
        FoundMark mark = found(x);
        assertFalse(search.isInverted(new MemoryAudio("x", RATE, x), 0, 1, mark));
        MemoryAudio silence = new MemoryAudio("x", RATE, new double[6000]);
        assertFalse(search.isInverted(silence, 0, 1, mark));
    }
}
