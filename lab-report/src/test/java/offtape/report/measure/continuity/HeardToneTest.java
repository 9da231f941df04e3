package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steady tones as they come back. */
class HeardToneTest {

    private static final int RATE = ShortProgramme.RATE;

    private static Cue tone(double seconds, double hz) {
        return new Cue.Tone("tone", ChannelSet.BOTH, RATE / 2, Math.round(seconds * RATE), hz, 0);
    }

    /** As if it returned with its place and speed as sent. */
    private static List<HeardTone> unchanged(Programme programme) {
        MemoryAudio sound = (MemoryAudio) programme.audio();
        return HeardTone.in(ShortProgramme.there(programme, sound, 0, 1));
    }

    /**
     * Tones of 900 Hz or more that last 0.3 s without 50 ms at both ends: of the short programme
     * all but the one of 400 Hz.
     */
    @Test
    void tonesAndStepsOfLaddersTellTime() {
        double speed = 1.006;
        MemoryAudio heard = ShortProgramme.heard(speed, 0.4);
        // where the programme lies is known, its speed only nearly
        List<HeardTone> tones = HeardTone.in(ShortProgramme.there(heard, 1.005));
        double[] from = {1.0, 2.3, 3.1, 3.9, 8.1, 11.9};
        double[] to = {2.0, 2.9, 3.7, 4.5, 10.1, 12.5};
        double[] hz = {1000, 2000, 2000, 2000, 3150, 5000};
        assertEquals(6, tones.size());
        for (int i = 0; i < 6; i++) {
            HeardTone t = tones.get(i);
            assertEquals(from[i], t.fromSeconds(), 1e-9);
            assertEquals(to[i], t.toSeconds(), 1e-9);
            assertEquals(1 / speed, t.stretch(), 2e-6);
            assertEquals(speed * hz[i], t.heardHz(), 2e-6 * hz[i]);
            assertEquals(ShortProgramme.BEFORE_S + from[i] / 1.005 + 0.05, t.span().from(), 1e-9);
            assertEquals(ShortProgramme.BEFORE_S + to[i] / 1.005 - 0.05, t.span().to(), 1e-9);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.41, 1000, 1", "0.39, 1000, 0", "0.41, 900, 1", "0.41, 899, 0"})
    void shortAndLowTonesTellNothing(double seconds, double hz, int count) {
        assertEquals(count, unchanged(ShortProgramme.of(2, tone(seconds, hz))).size());
    }

    /** Half a second of the tone; then 40 dB less, 20 Hz higher, which weighs a ten-thousandth. */
    @Test
    void whereTheToneIsWeakItTellsLittle() {
        double[] x = new double[2 * RATE];
        for (int i = RATE / 2; i < 3 * RATE / 2; i++) {
            boolean first = i < RATE;
            double hz = first ? 1000 : 1020;
            x[i] = (first ? 0.1 : 0.001) * Math.sin(2 * Math.PI * hz * i / RATE);
        }
        Programme programme = ShortProgramme.of(2, tone(1, 1000));
        HeardTone t =
                HeardTone.in(
                                ShortProgramme.there(
                                        programme, new MemoryAudio("return", RATE, x, x), 0, 1))
                        .get(0);
        assertEquals(1000, t.heardHz(), 0.05);
        assertEquals(1, t.stretch(), 5e-5);
    }

    /** The other channel holds another tone, softer. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.05, 1004", "0.05, 0.1, 996"})
    void theLouderChannelTells(double left, double right, double hz) {
        double[][] x = new double[2][2 * RATE];
        for (int i = 0; i < x[0].length; i++) {
            x[0][i] = left * Math.sin(2 * Math.PI * 1004 * i / RATE);
            x[1][i] = right * Math.sin(2 * Math.PI * 996 * i / RATE);
        }
        Programme programme = ShortProgramme.of(2, tone(1, 1000));
        MemoryAudio sound = new MemoryAudio("return", RATE, x);
        HeardTone t = HeardTone.in(ShortProgramme.there(programme, sound, 0, 1)).get(0);
        assertEquals(hz, t.heardHz(), 1e-3);
    }

    /** 2.3 ms of 3150 Hz are 7.245 periods: a quarter of a turn is missing, 1.54 rad. */
    @Test
    void itsPhaseJumpsWhereAPieceIsMissing() {
        MemoryAudio cut = ShortProgramme.broken(ShortProgramme.heard(1, 0.4), 10.25, -0.0023);
        List<Double> jumps =
                HeardTone.in(ShortProgramme.there(cut, 1)).stream()
                        .flatMap(t -> t.jumps(ShortProgramme.there(cut, 1)).stream())
                        .toList();
        assertEquals(1, jumps.size());
        assertEquals(10.25, jumps.get(0), 0.006);
    }

    /** But for a millisecond. */
    @Test
    void aStretchLiesWithinIt() {
        HeardTone tone = new HeardTone(10, 12, 1, null, 1000);
        assertTrue(tone.holds(10, 12));
        assertTrue(tone.holds(9.9995, 12.0005));
        assertFalse(tone.holds(9.9985, 11));
        assertFalse(tone.holds(11, 12.0015));
    }
}
