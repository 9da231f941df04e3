package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.dsp.Baseband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PassageTest {

    /** Where 500 Hz of the sweep lie: that moment of the programme, 0.2 s on, and so much late. */
    private static double foundLateSeconds(WrittenSweep written) {
        Passage back = Passage.back(written.ret(), written.cue());
        double middle = written.sweep().timeSeconds(500);
        double recording =
                written.leadSeconds() + (written.startSeconds() + middle) / written.speed();
        double found = back.toRecording().applyAsDouble(middle) - recording;
        assertEquals(middle, back.toSweep().applyAsDouble(recording + found), 1e-9, "both ways");
        return found;
    }

    /**
     * What the map of time errs by is set right by the sweep's own phase, on either side; a tape
     * that is 2 % fast has its map, so that the same error is as long in the programme.
     */
    @ParameterizedTest
    @CsvSource({"0.004, 1", "-0.004, 1", "0, 1", "0.003, 1.02", "-0.003, 0.98"})
    void theMapIsSetRight(double lateSeconds, double speed) {
        WrittenSweep written = WrittenSweep.plain().atSpeed(speed).later(lateSeconds);
        assertEquals(lateSeconds, foundLateSeconds(written), 2e-5);
    }

    /**
     * More than 50 ms is not an error of the map but something else. This sweep grows by the factor
     * e in L = 2.69 s, slowly enough for such an error e to be seen: it moves 650 Hz by 650 Hz · e
     * / L = 12 Hz. What is found is e − e²/2L, as the sweep's frequency is taken where it was e
     * earlier.
     */
    @ParameterizedTest
    @CsvSource({"0.048, true", "-0.048, true", "0.052, false", "-0.052, false"})
    void whatLiesTooFarOffIsLeft(double lateSeconds, boolean near) {
        WrittenSweep written =
                WrittenSweep.of(140, 1300, 6, WrittenSweep.gain(1)).later(lateSeconds);
        double l = written.sweep().growthSeconds();
        double expected = near ? lateSeconds - lateSeconds * lateSeconds / (2 * l) : 0;
        assertEquals(expected, foundLateSeconds(written), near ? 1e-5 : 1e-12);
    }

    /** From 150 Hz or the start to half of the end: an octave at least, or nothing is set right. */
    @ParameterizedTest
    @CsvSource({"740, 0.002", "750, 0.002", "760, 0"})
    void lessThanAnOctaveTellsNoPlace(double startHz, double expected) {
        WrittenSweep written = WrittenSweep.of(startHz, 3000, 2, WrittenSweep.gain(1)).later(0.002);
        Passage back = Passage.back(written.ret(), written.cue());
        double place = written.leadSeconds() + written.startSeconds();
        assertEquals(expected, back.toRecording().applyAsDouble(0) - place, 2e-5);
    }

    /** The louder channel tells it: here the right one, left being nothing but silence. */
    @Test
    void theLoudestChannelTellsThePlace() {
        WrittenSweep written =
                WrittenSweep.of(40, 3000, 3, WrittenSweep.gain(0), WrittenSweep.gain(0.1))
                        .later(0.004);
        assertEquals(0.004, foundLateSeconds(written), 2e-5);
    }

    /** The sweep's frequency at each sample, in the programme and in a fast, late return. */
    @Test
    void samplesKnowTheirFrequency() {
        WrittenSweep written = WrittenSweep.plain().atSpeed(1.25);
        Passage there = Passage.there(written.ret(), written.cue());
        double middle = written.sweep().timeSeconds(700);
        double start = written.startSeconds();
        assertEquals(start + middle, there.toRecording().applyAsDouble(middle), 1e-12);
        assertEquals(middle, there.toSweep().applyAsDouble(start + middle), 1e-12);
        Baseband base = new Baseband(new double[3], new double[3], 100, start + middle - 0.02);
        assertEquals(700, there.frequencyHz(base, 2), 1e-6);
        Passage back = Passage.back(written.ret(), written.cue());
        double recording = written.leadSeconds() + (start + middle) / 1.25;
        Baseband heard = new Baseband(new double[3], new double[3], 100, recording - 0.01);
        assertEquals(700, back.frequencyHz(heard, 1), 0.05);
    }
}
