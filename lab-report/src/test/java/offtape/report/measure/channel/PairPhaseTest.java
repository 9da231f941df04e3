package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.Leakage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The phase of left against right on a tone of 2 kHz, of which 100 µs are 0.4π. */
class PairPhaseTest {

    private static final int RATE = 8000;

    private static Optional<PairPhase> phase(LongTone tone) {
        ProgrammeReturn ret = tone.play(5);
        return PairPhase.of(ret, ret.cues(Cue.Tone.class).get(0), Leakage.NONE);
    }

    /** Positive if right is late; the 120 ms at both ends are left out. */
    @ParameterizedTest
    @CsvSource({"100, 1, 1.25664", "-100, 0.2, -1.25664", "0, -1, 3.14159"})
    void aSteadyDelayIsASteadyPhase(double us, double gain, double radians) {
        PairPhase phase =
                phase(new LongTone(RATE, 2000, 3).skew(us, 0, 1).rightGain(gain)).orElseThrow();
        assertTrue(phase.rateHz() >= 1000);
        assertEquals(2.76, phase.radians().length / phase.rateHz(), 0.002);
        assertEquals(0.12, phase.firstSeconds(), 0.001);
        assertEquals(2000, phase.toneHz());
        for (double p : phase.radians()) {
            assertEquals(0, Math.IEEEremainder(p - radians, 2 * Math.PI), 1e-4);
        }
    }

    /** On a tape that runs a quarter fast the same delay is as much more of a period. */
    @Test
    void theToneIsThatOfTheReturn() {
        PairPhase phase =
                phase(new LongTone(RATE, 2000, 3).speed(1.25).skew(100, 0, 1)).orElseThrow();
        assertEquals(2000, phase.toneHz(), 1e-6);
        assertEquals(0.4 * Math.PI, phase.radians()[1000], 1e-4);
    }

    /** A sway of 400 µs is one of 0.8 turns: more than half a turn, yet without jumps. */
    @Test
    void aWideSwayDoesNotJump() {
        PairPhase phase = phase(new LongTone(RATE, 2000, 3).skew(100, 400, 1)).orElseThrow();
        for (int k = 0; k < phase.radians().length; k++) {
            double t = phase.firstSeconds() + k / phase.rateHz();
            double us = 100 + 400 * Math.sin(2 * Math.PI * t);
            double turns = phase.radians()[k] / (2 * Math.PI) - 2000e-6 * us;
            // the whole turn that the first value left open
            assertEquals(Math.rint(turns), turns, 1e-3);
            assertEquals(0, Math.rint(turns), 1);
        }
    }

    /**
     * In a dropout of one channel the phase goes straight from what lies before to what lies after
     * it, with 12 ms at both ends, in which filters ring; at the ends of the tone it stays.
     */
    @ParameterizedTest
    @CsvSource({"0, 1.0", "1, 1.0", "0, 0.1", "1, 2.8"})
    void aDropoutIsBridged(int channel, double at) {
        LongTone tone =
                new LongTone(RATE, 2000, 3)
                        .hiss(-60)
                        .skew(100, 0, 1)
                        .damage(new LongTone.Damage(channel, at, 0.1, 60, 0));
        for (double p : phase(tone).orElseThrow().radians()) {
            assertEquals(0.4 * Math.PI, p, 0.03);
        }
    }

    /** The line over it is straight: a slow sway of 50 µs, where it is steepest, goes on. */
    @Test
    void theBridgeIsStraight() {
        LongTone tone =
                new LongTone(RATE, 2000, 3)
                        .skew(0, 50, 0.5)
                        .damage(new LongTone.Damage(0, 0.95, 0.1, 60, 0));
        PairPhase phase = phase(tone).orElseThrow();
        for (int k = 0; k < phase.radians().length; k++) {
            double t = phase.firstSeconds() + k / phase.rateHz();
            assertEquals(0.2 * Math.PI * Math.sin(Math.PI * t), phase.radians()[k], 0.005);
        }
    }

    /** A channel 3 dB weaker than usual, half its power, is bridged; one 2.5 dB weaker is read. */
    @ParameterizedTest
    @CsvSource({"2.5, true", "3.5, false"})
    void aWeakChannelIsNotRead(double lossDb, boolean read) {
        LongTone tone =
                new LongTone(RATE, 2000, 4)
                        .skew(0, 50, 4)
                        .damage(new LongTone.Damage(1, 1.925, 0.2, lossDb, 0));
        PairPhase phase = phase(tone).orElseThrow();
        // the sway, 0.2π, turns at 2.0625 s; a straight line does not
        int k = (int) Math.round((2.0625 - phase.firstSeconds()) * phase.rateHz());
        assertEquals(read, Math.abs(phase.radians()[k] - 0.2 * Math.PI) < 0.02);
    }

    /** A tenth of the tone may be lost, not more: of 2.76 s 0.276. */
    @ParameterizedTest
    @CsvSource({"0.23, true", "0.27, false"})
    void aToneThatIsOftenLostTellsNothing(double seconds, boolean told) {
        LongTone tone =
                new LongTone(RATE, 2000, 3).damage(new LongTone.Damage(0, 1, seconds, 60, 0));
        assertEquals(told, phase(tone).isPresent());
        LongTone atTheEnd =
                new LongTone(RATE, 2000, 3)
                        .damage(new LongTone.Damage(0, 2.88 - seconds, 1, 60, 0));
        assertEquals(told, phase(atTheEnd).isPresent());
    }

    /** A thousand phases at least; and 220 Hz twice over below half the rate. */
    @ParameterizedTest
    @CsvSource({"1.26, 2000, true", "0.9, 2000, false", "1.5, 3550, true", "1.5, 3570, false"})
    void aShortOrHighToneTellsNothing(double seconds, double hz, boolean told) {
        assertEquals(told, phase(new LongTone(RATE, hz, seconds)).isPresent());
    }
}
