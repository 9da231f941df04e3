package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.report.locate.LateMoment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweepLatenessTest {

    /** Nine seconds from 40 Hz to 3 kHz: L = 9 s / ln 75 = 2.0846 s. */
    private static WrittenSweep slow(WrittenSweep.Path... channels) {
        return WrittenSweep.of(40, 3000, 9, channels);
    }

    /** Late by a time, by its phase. */
    private static WrittenSweep.Path late(double gain, double seconds) {
        return (phase, hz) -> gain * Math.sin(phase - 2 * Math.PI * hz * seconds);
    }

    private static List<LateMoment> of(WrittenSweep written) {
        return SweepLateness.of(written.ret(), written.cue());
    }

    /**
     * From 1 kHz to 0.7 · 3 kHz = 2.1 kHz, or to 0.3 of the rate if that is less, pass 2.0846 s ·
     * ln 2.1 = 1.547 s: three blocks of half a second, the first from 1 kHz on, which is 2.0846 s ·
     * ln 25 = 6.710 s into the sweep. The lead of 0.2 s counts, whether the map of time knows of
     * the rest or not.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.003, 1", "-0.003, -1", "0.0002, -0.3"})
    void everyHalfSecondTellsHowLateItIs(double lateSeconds, double gain) {
        WrittenSweep written = slow(WrittenSweep.gain(gain)).later(lateSeconds);
        List<LateMoment> moments = of(written);
        assertEquals(3, moments.size());
        double first = written.startSeconds() + 6.710 + 0.25;
        for (int i = 0; i < 3; i++) {
            LateMoment m = moments.get(i);
            assertEquals("sweep", m.part());
            assertEquals(first + 0.5 * i, m.programmeSeconds(), 0.006);
            assertEquals(0.2 + lateSeconds, m.lateSeconds(), 1e-6);
        }
    }

    /**
     * Late by 300 µs · ln(f / 1 kHz), which rises evenly with time: a block tells that of its
     * middle.
     */
    @Test
    void aBlockTellsItsMiddle() {
        WrittenSweep written =
                slow(
                        (phase, hz) ->
                                Math.sin(phase - 2 * Math.PI * hz * 300e-6 * Math.log(hz / 1000)));
        for (LateMoment m : of(written)) {
            double hz = written.sweep().frequencyHz(m.programmeSeconds() - written.startSeconds());
            assertEquals(0.2 + 300e-6 * Math.log(hz / 1000), m.lateSeconds(), 1e-7);
        }
    }

    /** At half the speed up to nothing more: the moment is where the map has it. */
    @Test
    void timesAreThoseOfTheProgramme() {
        WrittenSweep written = slow(WrittenSweep.gain(1)).atSpeed(1.01);
        List<LateMoment> moments = of(written);
        assertEquals(3, moments.size());
        for (LateMoment m : moments) {
            double expected = 0.2 + m.programmeSeconds() * (1 / 1.01 - 1);
            assertEquals(expected, m.lateSeconds(), 1e-6);
        }
    }

    /**
     * The mean of the channels that sound; one that should be silent, or is weaker than a
     * thousandth of the other's power, does not count.
     */
    @ParameterizedTest
    @CsvSource({
        "BOTH, 1, 1, 50",
        "BOTH, 1, 0.033, 50",
        "BOTH, 1, 0.031, 0",
        "BOTH, 0.031, 1, 100",
        "LEFT, 1, 0.5, 0",
        "RIGHT, 0.5, 1, 100"
    })
    void channelsAreAveraged(ChannelSet set, double left, double right, double microseconds) {
        WrittenSweep written = slow(late(left, 0), late(right, 100e-6)).on(set);
        List<LateMoment> moments = of(written);
        assertEquals(3, moments.size());
        for (LateMoment m : moments) {
            assertEquals(0.2 + 1e-6 * microseconds, m.lateSeconds(), 1e-6);
        }
    }

    @Test
    void aSilentReturnTellsNothing() {
        assertEquals(List.of(), of(slow(WrittenSweep.gain(0), WrittenSweep.gain(0))));
        assertEquals(List.of(), of(slow(WrittenSweep.gain(1)).on(ChannelSet.RIGHT)), "mono");
    }

    /** It must be followed from 250 Hz, and over an octave from 1 kHz: 0.7 · 2858 Hz = 2001 Hz. */
    @ParameterizedTest
    @CsvSource({
        "250, 3000, 8000, true",
        "251, 3000, 8000, false",
        "100, 2858, 8000, true",
        "100, 2856, 8000, false",
        "100, 3200, 6668, true",
        "100, 3200, 6664, false"
    })
    void theMidsAreNeeded(double startHz, double endHz, int rateHz, boolean told) {
        WrittenSweep written =
                WrittenSweep.of(startHz, endHz, 6, WrittenSweep.gain(1)).recordedAt(rateHz);
        assertEquals(told, !of(written).isEmpty());
    }

    /**
     * The end of the last block lies before what is read: at most 0.3 of the rate or 0.7 of the
     * end.
     */
    @ParameterizedTest
    @ValueSource(ints = {7000, 8000})
    void blocksAreWhole(int rateHz) {
        WrittenSweep written = slow(WrittenSweep.gain(1)).recordedAt(rateHz);
        double to = Math.min(2100, 0.3 * rateHz);
        int blocks = (int) (9 / Math.log(75) * Math.log(to / 1000) / 0.5);
        assertEquals(blocks, of(written).size());
    }
}
