package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;

class ToneSearchTest {

    private static final int RATE = 4000;

    /** Blocks of 256 samples, 0.064 s, 0.1 s apart. */
    private static final ToneRange RANGE =
            new ToneRange(0.1, 100, 1800, 0.01, 3, 0.7, 0.025, 1, -60, 0);

    private static double sine(double hz, double t) {
        return Math.sin(2 * Math.PI * hz * t);
    }

    /** 1 kHz from 2 s to 5 s, 500 Hz to 29 s, two tones from 30 s to 33 s, then nothing to 36 s. */
    private static MemoryAudio sound() {
        return new MemoryAudio(
                "x",
                RATE,
                IntStream.range(0, 36 * RATE).mapToDouble(i -> value((double) i / RATE)).toArray());
    }

    private static double value(double t) {
        if (t < 2 || t >= 29 && t < 30 || t >= 33) {
            return 0;
        }
        return t < 5
                ? 0.1 * sine(1000, t)
                : t < 29 ? 0.2 * sine(500, t) : 0.1 * sine(400, t) + 0.09 * sine(1500, t);
    }

    /** A tone is heard from the first block that reaches into it to the last that begins in it. */
    @Test
    void tonesAndPairsAreFound() {
        ToneSearch search = ToneSearch.in(sound(), RANGE, 0, 100);
        assertEquals(2, search.tones().size(), search.toString());
        assertTone(2, 5, 1000, search.tones().get(0));
        assertTone(5, 29, 500, search.tones().get(1));
        assertEquals(1, search.pairs().size(), search.toString());
        assertTone(30, 33, 400, search.pairs().get(0));
        assertEquals(1500, search.pairs().get(0).secondHz(), 2);
        assertEquals(20 * Math.log10(0.9), search.pairs().get(0).secondDb(), 0.3);
    }

    private static void assertTone(double from, double to, double hz, FoundTone tone) {
        assertEquals(from, tone.fromSeconds(), 0.11);
        assertEquals(to, tone.toSeconds(), 0.11);
        assertEquals(hz, tone.frequencyHz(), 0.002 * hz);
    }

    /** A search from 3.05 s has its blocks there, and one to 4.65 s ends 16 blocks later. */
    @Test
    void aStretchIsSearched() {
        List<FoundTone> tones = ToneSearch.in(sound(), RANGE, 3.05, 4.65).tones();
        assertEquals(1, tones.size());
        assertEquals(3.05, tones.get(0).fromSeconds(), 1e-9);
        assertEquals(4.65, tones.get(0).toSeconds(), 1e-9);
        assertEquals(List.of(), ToneSearch.in(sound(), RANGE, 3, 3.9).tones(), "too short");
        assertEquals(1, ToneSearch.in(sound(), RANGE, 3, 4).tones().size());
        assertEquals(List.of(), ToneSearch.in(sound(), RANGE, 5, 4).tones());
        assertEquals(List.of(), ToneSearch.in(sound(), RANGE, 40, 50).tones(), "after its end");
    }

    /** 280 blocks are more than are held at once, and fewer than twice as many. */
    @Test
    void aLongStretchEndsWhereItShould() {
        List<FoundTone> tones = ToneSearch.in(sound(), RANGE, 0, 28.05).tones();
        assertEquals(2, tones.size());
        assertEquals(28, tones.get(1).toSeconds(), 1e-9);
    }
}
