package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ExpectedTimeTest {

    private static HeardTone tone(double from, double to, double stretch) {
        return new HeardTone(from, to, stretch, null, 1000);
    }

    /** A tone of its own speed needs no neighbours: 2 s at a stretch of 1.01 are 20 ms more. */
    @Test
    void withinATone() {
        ExpectedTime time = new ExpectedTime(List.of(tone(0, 5, 1.01)));
        ExpectedTime.Later later = time.between(1, 3).orElseThrow();
        assertEquals(0.02, later.seconds(), 1e-12);
        assertEquals(0, later.doubtSeconds());
    }

    /**
     * One tone before ten silent seconds and three alike behind them show no scatter, yet the tones
     * of the whole return swing by 0.04 % around their middle, the median of their distances from
     * it: over 10 s that is 10 · 1.4826 · 0.0004 = 5.9 ms of doubt.
     */
    @Test
    void fewTonesThatAreAlikeByChance() {
        List<HeardTone> tones =
                List.of(
                        tone(0, 1, 1.0000),
                        tone(11, 12, 1.0000),
                        tone(12, 13, 1.0000),
                        tone(13, 14, 1.0000),
                        tone(14, 15, 1.0004),
                        tone(15, 16, 0.9996),
                        tone(16, 17, 1.0006),
                        tone(17, 18, 0.9994),
                        tone(18, 19, 1.0004));
        ExpectedTime.Later later = new ExpectedTime(tones).between(1, 11).orElseThrow();
        assertEquals(0, later.seconds(), 1e-12);
        assertEquals(0.00593, later.doubtSeconds(), 1e-5);
    }

    @Test
    void nothingIsKnownBeyondTheTones() {
        ExpectedTime time = new ExpectedTime(List.of(tone(0, 1, 1), tone(1, 2, 1)));
        assertTrue(time.between(3, 5).isEmpty());
        assertTrue(new ExpectedTime(List.of()).between(3, 5).isEmpty());
    }
}
