package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import offtape.core.dsp.Baseband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pieces of 400 values at 1000 a second, made of a level and a phase. The differentiator sees 24
 * values on either side, so that slope i comes from values i to i + 48.
 */
class ChannelPieceTest {

    private static final int SIZE = 400;

    /** How high the tone is whose levels the cases give as shares. */
    private static final double TONE = 4;

    private static final IntToDoubleFunction STILL = k -> 0;

    private static ChannelPiece piece(
            IntToDoubleFunction level, IntToDoubleFunction phase, double before, double gone) {
        double[] re = new double[SIZE];
        double[] im = new double[SIZE];
        Arrays.setAll(re, k -> TONE * level.applyAsDouble(k) * Math.cos(phase.applyAsDouble(k)));
        Arrays.setAll(im, k -> TONE * level.applyAsDouble(k) * Math.sin(phase.applyAsDouble(k)));
        return ChannelPiece.of(new Baseband(re, im, 1000, 0), TONE * before, gone);
    }

    private static void assertSpoilt(int from, int to, ChannelPiece piece) {
        int[] spoilt = IntStream.range(0, SIZE - 48).filter(k -> !piece.isClear(k)).toArray();
        assertEquals(from, spoilt[0]);
        assertEquals(to, spoilt[spoilt.length - 1]);
        assertEquals(to - from + 1, spoilt.length);
        assertFalse(piece.isAllClear());
    }

    /** A tone 5 Hz over its carrier turns by 2π·5 rad/s; the differentiator holds 1e-4 of it. */
    @Test
    void aCleanToneIsClearThroughout() {
        ChannelPiece piece = piece(k -> 0.3, k -> 2 * Math.PI * 5 * k / 1000, 0, 0.25);
        assertTrue(piece.isAllClear());
        assertEquals(0.3, piece.level() / TONE, 1e-12);
        for (int k = 0; k < SIZE - 48; k++) {
            assertEquals(2 * Math.PI * 5, piece.slope(k), 2 * Math.PI * 5 * 1e-4);
            assertTrue(piece.isClear(k));
        }
    }

    /** Values 200 to 209 are gone: every slope that sees one of them is spoilt. */
    @Test
    void whatSeesADropoutIsSpoilt() {
        assertSpoilt(152, 209, piece(k -> k >= 200 && k < 210 ? 0.24 : 1, STILL, 0, 0.25));
        assertTrue(
                piece(k -> k >= 200 && k < 210 ? 0.25 : 1, STILL, 0, 0.25).isAllClear(),
                "a level of just the share is not gone");
        assertSpoilt(0, 9, piece(k -> k < 10 ? 0.1 : 1, STILL, 0, 0.25));
        assertSpoilt(342, 351, piece(k -> k >= 390 ? 0.1 : 1, STILL, 0, 0.25));
    }

    /**
     * The level of a piece is the median of its values, but if that lies under a quarter of what a
     * tenth of them reach, it is that: the tone may be gone for most of the piece.
     */
    @ParameterizedTest
    @CsvSource({
        "200, 0.1, 0, 1",
        "201, 0.1, 0, 1",
        "201, 0.24, 0, 1",
        "201, 0.25, 0, 0.25",
        "201, 0.5, 0, 0.5",
        "360, 0.1, 0, 1",
        "361, 0.1, 0, 0.1"
    })
    void theLevelIsThatOfTheTone(int low, double level, double before, double expected) {
        assertEquals(
                expected,
                piece(k -> k < low ? level : 1, STILL, before, 0.01).level() / TONE,
                1e-12);
    }

    /** −12 dB from one piece to the next is the most: what is lower is gone as a whole. */
    @Test
    void aPieceWithoutTheToneIsGone() {
        ChannelPiece lost = piece(k -> 0.01, STILL, 1, 0.1);
        assertEquals(0.25, lost.level() / TONE, 1e-12);
        assertSpoilt(0, 351, lost);
        ChannelPiece quieter = piece(k -> 0.3, STILL, 1, 0.1);
        assertEquals(0.3, quieter.level() / TONE, 1e-12);
        assertTrue(quieter.isAllClear());
    }

    /**
     * A click turns one value's phase and raises its level. It is taken to be 13 values long, six
     * on either side, so that with the differentiator's 24 and as much to either side of it the
     * slopes from 200 − 24 − 6 − 24 on are spoilt.
     */
    @Test
    void phaseAndLevelTogetherAreAClick() {
        IntToDoubleFunction turned = k -> k == 200 ? 0.1 : 0;
        assertSpoilt(146, 206, piece(k -> k == 200 ? 1.015 : 1, turned, 0, 0.1));
        assertSpoilt(146, 206, piece(k -> k == 200 ? 0.985 : 1, turned, 0, 0.1));
        assertTrue(piece(k -> 1, turned, 0, 0.1).isAllClear(), "a jerk of the tape");
        assertTrue(piece(k -> k == 200 ? 1.015 : 1, STILL, 0, 0.1).isAllClear(), "a flicker");
        assertTrue(
                piece(k -> k == 200 ? 1.009 : 1, turned, 0, 0.1).isAllClear(),
                "less than a hundredth of the level");
        assertTrue(
                piece(k -> k == 290 ? 1.015 : 1, turned, 0, 0.1).isAllClear(),
                "one here and the other there");
    }

    /**
     * Level and phase that are unsteady throughout strike no more than fifteen times the median of
     * their jerks: a level that alternates by ±a every six values lies 2·a off the line between its
     * neighbours everywhere, and a high one that is raised by b lies b + 2·a off: 0.3 is fifteen
     * times 0.02.
     */
    @ParameterizedTest
    @CsvSource({"0.27, true", "0.33, false"})
    void whatIsUnsteadyThroughoutIsNoClick(double raised, boolean isClear) {
        IntToDoubleFunction unsteady = k -> 1 + (k / 6 % 2 == 0 ? 0.01 : -0.01);
        ChannelPiece piece =
                piece(
                        k -> unsteady.applyAsDouble(k) + (k == 204 ? raised : 0),
                        k -> k == 204 ? 0.1 : 0,
                        0,
                        0.1);
        assertEquals(isClear, piece.isAllClear());
    }

    /** The phase likewise: flutter whose every value jerks hides a turn that is no larger. */
    @Test
    void unsteadyPhaseHidesAClick() {
        IntToDoubleFunction flutter = k -> 0.1 * Math.sin(2 * Math.PI * k / 12.5);
        IntToDoubleFunction level = k -> k == 200 ? 1.02 : 1;
        assertTrue(
                piece(level, k -> flutter.applyAsDouble(k) + (k == 200 ? 0.1 : 0), 0, 0.1)
                        .isAllClear());
        assertFalse(
                piece(level, k -> 0.001 * flutter.applyAsDouble(k) + (k == 200 ? 0.1 : 0), 0, 0.1)
                        .isAllClear());
    }
}
