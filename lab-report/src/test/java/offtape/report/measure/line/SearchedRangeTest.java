package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where lines are looked for, and how long. */
class SearchedRangeTest {

    /**
     * A part has to make six turns: 0.6 Hz in ten seconds. Of the rate 0.45 is looked at, 45 Hz of
     * 100; at 500 Hz 200 Hz are the limit. Slower than 0.15 Hz is drift however long it is watched.
     */
    @ParameterizedTest
    @CsvSource({
        "10, 100, 0.62, 1",
        "10, 100, 0.45, 0",
        "10, 100, 44.9, 1",
        "10, 100, 45.2, 0",
        "10, 500, 199.9, 1",
        "10, 500, 200.2, 0",
        "60, 20, 0.155, 1",
        "60, 20, 0.13, 0",
        "20, 100, 0.31, 1",
        "20, 100, 0.22, 0"
    })
    void linesAreLookedForWithinLimits(double seconds, double rateHz, double hz, int count) {
        double[] x = Deviations.noise(0.001, seconds, rateHz, 3).line(hz, 0.1, 0.5).samples();
        List<FoundLine> lines = LineSearch.find(x, rateHz);
        assertEquals(count, lines.size(), lines.toString());
        for (FoundLine line : lines) {
            assertEquals(hz, line.middleHz(), line.hzUncertainty() * 1.5);
        }
    }

    /**
     * A small pack of thick tape, 8 mm and 16 µm at 176 mm/s, turns at 3.5 Hz and slows down by
     * some 7 % within 12 s: followed over 12 s, not asked for over 11 s.
     */
    @Test
    void reelsNeedTwelveSeconds() {
        double[] x = Deviations.noise(0.001, 12, 50, 1).reel(8, 0.016, 176, 0.1, 0).samples();
        FoundLine line = LineSearch.find(x, 50).get(0);
        assertTrue(line.moves());
        assertEquals(176 / (2 * Math.PI * 8), line.startHz(), line.hzUncertainty() * 1.5);
        double end = Deviations.radius(8, 0.016, 176, 12);
        assertEquals(176 / (2 * Math.PI * end), line.endHz(), line.hzUncertainty() * 1.5);
        List<FoundLine> shorter = LineSearch.find(LineSearch.beginning(x, 11 * 50), 50);
        assertFalse(shorter.isEmpty());
        assertFalse(shorter.stream().anyMatch(FoundLine::moves));
        assertEquals(0, shorter.get(0).changeUncertainty(), 0);
    }

    /** Above 4 Hz no line is asked whether it moves; below, its change is told with its doubt. */
    @Test
    void reelsTurnBelowFourHertz() {
        double[] x =
                Deviations.noise(0.002, 20, 50, 1).line(3.8, 0.1, 0).line(4.3, 0.2, 0).samples();
        List<FoundLine> lines = LineSearch.find(x, 50);
        assertEquals(2, lines.size());
        assertEquals(4.3, lines.get(0).startHz(), 1e-3, "the larger first");
        assertEquals(0, lines.get(0).changeUncertainty(), 0);
        assertEquals(3.8, lines.get(1).startHz(), 1e-3);
        assertTrue(lines.get(1).changeUncertainty() > 0);
    }

    /** Ten minutes at 1 Hz are 600 samples: a line that comes later is not heard. */
    @Test
    void tenMinutesAreLookedAt() {
        double[] x = Deviations.noise(0.001, 900, 1, 1).samples();
        for (int i = 600; i < x.length; i++) {
            x[i] += Math.sin(2 * Math.PI * 0.3 * i);
        }
        assertEquals(List.of(), LineSearch.find(x, 1));
        assertArrayEquals(new double[] {x[0], x[1]}, LineSearch.beginning(x, 2), 0);
        assertEquals(900, LineSearch.beginning(x, 1000).length);
        assertEquals(900, LineSearch.beginning(x, 900).length);
    }

    @Test
    void tooLittleTellsNothing() {
        assertEquals(List.of(), LineSearch.find(new double[20], 10));
        assertEquals(List.of(), LineSearch.find(new double[0], 100));
    }
}
