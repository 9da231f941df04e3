package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Cue;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Speeds of machines made for another mains, of other speeds selected, and both together. What is
 * sent at the time p comes back at before + p / speed.
 */
class SpeedRangeTest {

    private static final double CLEAN_S = 5e-6;

    private static Returns returns;

    @BeforeAll
    static void generate() {
        returns = Returns.ofSmall();
    }

    @ParameterizedTest
    @CsvSource({
        "0.8, 2.1, 48000",
        "0.8333333, 0.4, 48000",
        "0.92, 3, 44100",
        "1.06, 0.3, 48000",
        "1.2, 1.7, 48000",
        "0.5, 2.2, 48000",
        "2, 4.3, 96000",
        "2.35, 1, 96000",
        "0.42, 0.6, 48000",
        "1.5, 2, 96000",
    })
    void findsTheProgrammeAtAnySpeed(double speed, double before, int rate) {
        MemoryAudio recording = returns.of(rate, before, 2, speed, 0.5, 0.4);
        Location found = Locator.locate(returns.programme(), recording);
        double worst = 0;
        for (Cue cue : returns.programme().sheet().cues()) {
            double p = (double) cue.startFrame() / Returns.RATE;
            double error = found.map().recordingSeconds(p) - (before + p / speed);
            worst = Math.max(worst, Math.abs(error));
        }
        assertTrue(worst < 2e-5, "worst cue start " + worst);
        assertEquals(before, found.delaySeconds(), CLEAN_S);
        assertEquals(speed, found.map().speedRatio(8), 2e-5 * speed);
        assertTrue(found.startMarkerFound() && found.endMarkerFound());
        assertEquals(0, found.takes().size());
    }
}
