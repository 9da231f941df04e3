package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.programme.ChannelSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweepFollowerTest {

    private static FollowedSweep followed(WrittenSweep written) {
        return new SweepFollower(written.cue(), WrittenSweep.RATE).follow(written.ret());
    }

    /** A quarter and a sixteenth of the power, the right one inverted, in every band. */
    @Test
    void channelsAreFollowedEachForItself() {
        FollowedSweep sweep =
                followed(
                        WrittenSweep.of(
                                40, 3000, 3, WrittenSweep.gain(0.5), WrittenSweep.gain(-0.25)));
        for (int i = 0; i < sweep.size(); i++) {
            double sent = sweep.programmePower(i);
            String where = sweep.frequencyHz(i) + " Hz";
            assertEquals(0.25, sweep.power(0, i) / sent, 1e-4, where);
            assertEquals(0.0625, sweep.power(1, i) / sent, 1e-4, where);
            assertEquals(0, sweep.phase(0, i), 1e-3, where);
            assertEquals(Math.PI, Math.abs(sweep.phase(1, i)), 1e-3, where);
            assertEquals(-0.125, sweep.crossRe(i) / sent, 1e-4, where);
        }
        // a sine of peak 0.5 has 0.25/4
        assertEquals(0.0625, sweep.programmePower(sweep.index(500)), 1e-4);
        assertEquals(1000 * 3 / Math.log(75), sweep.growthCycles(1000), 1e-6);
    }

    /**
     * A power that rises as the frequency is read at the middle of each band: over a band of 1/48
     * octave it is straight. Also off a tape that runs fast or slow, by the programme's frequency.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.06, 0.95})
    void bandsHoldWhatPassesInThem(double speed) {
        FollowedSweep sweep =
                followed(
                        WrittenSweep.of(
                                        40,
                                        3000,
                                        3,
                                        (phase, hz) -> Math.sqrt(hz / 1000) * Math.sin(phase))
                                .atSpeed(speed));
        for (int i = sweep.index(100); i < sweep.size() - 3; i++) {
            double hz = sweep.frequencyHz(i);
            double ratio = sweep.power(0, i) / sweep.programmePower(i);
            assertEquals(hz / 1000, ratio, 0.004 * ratio, hz + " Hz");
        }
    }

    /**
     * The first band above the start, and up to the last below the sweep's end or below what either
     * recording can hold with room for the filter (4000 / 1.055 = 3791 Hz at 8 kHz, 2844 Hz at 6
     * kHz; a tape that is fast brings less of it back, a slow one not more). Bands around 1000 ·
     * 2^(n/48): 3000 Hz lies in number 76, 3791 Hz in 92, 2844 Hz in 72, 3791/1.1 = 3447 Hz in 86.
     */
    @ParameterizedTest
    @CsvSource({
        "3000, 8000, 1, 75",
        "3990, 8000, 1, 91",
        "3990, 6000, 1, 71",
        "3990, 8000, 1.1, 85",
        "3990, 8000, 0.9, 91",
        "3990, 16000, 1, 91"
    })
    void bandsEndWithWhatCanBeHeard(double endHz, int rateHz, double speed, int last) {
        WrittenSweep written =
                WrittenSweep.of(700, endHz, 0.5, WrittenSweep.gain(1))
                        .recordedAt(rateHz)
                        .atSpeed(speed);
        FollowedSweep sweep = followed(written);
        // 700 Hz lies in band −25
        assertEquals(SweepFollower.bandHz(-24), sweep.frequencyHz(0), 1e-9);
        assertEquals(SweepFollower.bandHz(last), sweep.frequencyHz(sweep.size() - 1), 1e-9);
    }

    @Test
    void aSweepOfNoWholeBandHasNone() {
        assertEquals(0, followed(WrittenSweep.of(994, 1006, 0.5, WrittenSweep.gain(1))).size());
    }

    /** The programme's own sweep is that of the channel on which it sounds. */
    @ParameterizedTest
    @CsvSource({"LEFT, 2", "RIGHT, 2", "BOTH, 2", "RIGHT, 1", "BOTH, 1"})
    void theProgrammesSweepIsOnItsChannel(ChannelSet set, int programmeChannels) {
        FollowedSweep sweep =
                followed(
                        WrittenSweep.of(300, 3000, 1, WrittenSweep.gain(1), WrittenSweep.gain(1))
                                .on(set)
                                .programmeOf(programmeChannels));
        assertEquals(0.0625, sweep.programmePower(sweep.index(1000)), 1e-4);
    }

    /**
     * What is kept beside the sweep, both sides together: between twice and four times 6 Hz, or 2.5
     * % of where its half octave starts, but no more than 30 %. Sections start at 10 Hz · √2^n.
     */
    @ParameterizedTest
    @CsvSource({"11, 6, 12", "30, 12, 24", "200, 12, 24", "500, 22.6, 45.3", "2000, 90.5, 181.1"})
    void whatIsKeptGrowsWithTheFrequency(double hz, double fromHz, double toHz) {
        FollowedSweep sweep = followed(WrittenSweep.of(10, 3000, 3, WrittenSweep.gain(1)));
        double bandSeconds = 3 / Math.log(300) * Math.log(2) / 48;
        double width = sweep.values(sweep.index(hz)) / bandSeconds;
        assertTrue(width > fromHz && width < toHz, width + " Hz");
    }
}
