package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /**
     * Three tones to either side tell, not those beyond them: 1.001 before and 1.003 behind make
     * 1.002 of ten seconds, 20 ms later. All eight tones differ by 0.001 from their middle, 1.002
     * (the median of their distances), and so do the two sides: the doubt is 10 s · √(1.4826² + 1²)
     * · 0.001 = 17.883 ms.
     */
    @Test
    void theThreeTonesToEitherSideTell() {
        List<HeardTone> tones =
                List.of(
                        tone(0, 1, 9.0),
                        tone(1, 2, 1.001),
                        tone(2, 3, 1.001),
                        tone(3, 9.9, 1.001),
                        tone(10.1, 14, 1.003),
                        tone(15, 16, 1.003),
                        tone(16, 17, 1.003),
                        tone(17, 18, 0.5));
        ExpectedTime.Later later = new ExpectedTime(tones).between(5, 15).orElseThrow();
        assertEquals(0.02, later.seconds(), 1e-12);
        assertEquals(0.017883, later.doubtSeconds(), 1e-6);
    }

    /**
     * Tones on one side differ by 0.002 from their middle, the other side and all beyond are of
     * nominal speed: 10 s · 1.4826 · 0.002 = 29.652 ms. A tone around the middle of the stretch
     * lies on neither side.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theMoreUnsteadySideCounts(boolean before) {
        double up = before ? 0.002 : 0;
        double down = before ? 0 : 0.002;
        List<HeardTone> tones =
                List.of(
                        tone(0, 1, 1),
                        tone(1, 2, 1),
                        tone(2, 3, 1 + up),
                        tone(3, 4, 1),
                        tone(4, 5, 1 - up),
                        tone(6, 14, 7.0),
                        tone(15, 16, 1 + down),
                        tone(16, 17, 1),
                        tone(17, 18, 1 - down),
                        tone(18, 19, 1),
                        tone(19, 20, 1));
        ExpectedTime.Later later = new ExpectedTime(tones).between(5, 15).orElseThrow();
        assertEquals(0, later.seconds(), 1e-12);
        assertEquals(0.029652, later.doubtSeconds(), 1e-6);
    }

    /** The edges of a tone are its own, but for a millisecond of rounding. */
    @Test
    void aStretchOfAToneIsKnownWithoutDoubt() {
        ExpectedTime time =
                new ExpectedTime(List.of(tone(0, 1, 1), tone(2, 4, 1.01), tone(5, 6, 1)));
        assertEquals(0.02, time.between(2, 4).orElseThrow().seconds(), 1e-12);
        assertEquals(0, time.between(2, 4).orElseThrow().doubtSeconds());
    }

    /** On one side there is a tone, on the other none. */
    @Test
    void oneSideIsNotEnough() {
        ExpectedTime time = new ExpectedTime(List.of(tone(4, 5, 1), tone(5, 6, 1)));
        assertTrue(time.between(1, 3).isEmpty());
        assertTrue(time.between(7, 9).isEmpty());
    }

    @Test
    void nothingIsKnownBeyondTheTones() {
        assertTrue(new ExpectedTime(List.of()).between(3, 5).isEmpty());
    }
}
