package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.programme.ChannelSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HarmonicFollowerTest {

    private static FollowedHarmonics followed(WrittenSweep written) {
        return HarmonicFollower.followLoudest(written.ret()).orElseThrow();
    }

    /**
     * A sine is a cosine 90° late, so sin(2φ + 50°) = cos(2φ − 40°) lies −40° + 2 · 90° ahead of
     * twice it, sin(3φ − 20°) = cos(3φ − 110°) −110° + 3 · 90°. Late or fast returns show the same.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.003, 1", "0, 1.03"})
    void harmonicsAreReadWithTheirPhase(double lateSeconds, double speed) {
        FollowedHarmonics followed =
                followed(
                        WrittenSweep.of(
                                        100,
                                        3000,
                                        3,
                                        (phase, hz) ->
                                                Math.sin(phase)
                                                        + 0.01
                                                                * Math.sin(
                                                                        2 * phase
                                                                                + Math.toRadians(
                                                                                        50))
                                                        + 0.03
                                                                * Math.sin(
                                                                        3 * phase
                                                                                - Math.toRadians(
                                                                                        20)),
                                        WrittenSweep.gain(0.5))
                                .later(lateSeconds)
                                .atSpeed(speed));
        int seen = 0;
        for (int i = 1; i < followed.size() && followed.reaches(3, i); i++) {
            double fundamental = followed.power(0, 1, i);
            assertEquals(0.0625, fundamental, 1e-3 * 0.0625);
            assertEquals(0.01, Math.sqrt(followed.power(0, 2, i) / fundamental), 2e-4);
            assertEquals(0.03, Math.sqrt(followed.power(0, 3, i) / fundamental), 3e-4);
            assertEquals(140, Math.toDegrees(followed.phase(0, 2, i)), 1);
            assertEquals(160, Math.toDegrees(followed.phase(0, 3, i)), 1);
            assertTrue(followed.power(1, 3, i) < 1e-8, "none on the right");
            seen++;
        }
        assertTrue(seen > 15, seen + " bands");
    }

    /**
     * The second harmonic must lie under 0.46 of the rate, which at 8 kHz is 3680 Hz, so the last
     * whole band below 1840 Hz is that around 1000 · 2^(4/6) = 1587 Hz. A fast tape lowers that, a
     * slow one does not raise it. At 48 kHz 20 kHz are the limit: 1000 · 2^(19/6) = 8980 Hz.
     */
    @ParameterizedTest
    @CsvSource({
        "3000, 8000, 1, 1587.4",
        "3000, 8000, 1.25, 1259.9",
        "3000, 8000, 0.8, 1587.4",
        "1300, 8000, 1, 1122.5",
        "14000, 48000, 1, 8979.7"
    })
    void harmonicsAreFollowedAsFarAsTheyAreHeard(
            double endHz, int rateHz, double speed, double lastHz) {
        FollowedHarmonics followed =
                followed(
                        WrittenSweep.of(400, endHz, 0.5, WrittenSweep.gain(1))
                                .recordedAt(rateHz)
                                .atSpeed(speed));
        assertEquals(lastHz, followed.frequencyHz(followed.size() - 1), 0.05);
        for (int i = 0; i < followed.size(); i++) {
            assertTrue(followed.reaches(1, i), followed.frequencyHz(i) + " Hz");
        }
        // 400 Hz = 1000 · 2^(−7.93/6): the first whole band is that around 1000 · 2^(−7/6)
        assertEquals(445.4, followed.frequencyHz(0), 0.05);
    }

    /** Sweeps on one channel show crosstalk and are asked for no harmonics. */
    @Test
    void onlySweepsOnBothChannelsAreFollowed() {
        for (ChannelSet set : List.of(ChannelSet.LEFT, ChannelSet.RIGHT)) {
            WrittenSweep written = WrittenSweep.plain().on(set);
            assertTrue(HarmonicFollower.followLoudest(written.ret()).isEmpty());
        }
    }

    /**
     * What is kept beside a harmonic, both sides together: between twice and four times 12 Hz or 2
     * % of where the half octave starts. White noise of that width in bands of 0.17 s scatters so.
     */
    @Test
    void bandsKnowTheirLength() {
        FollowedHarmonics followed = followed(WrittenSweep.plain());
        assertEquals(3 / Math.log(75) * Math.log(2) / 6, followed.bandSeconds(), 1e-12);
    }
}
