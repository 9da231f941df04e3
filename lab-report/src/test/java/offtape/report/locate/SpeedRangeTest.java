package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Speeds of machines made for another mains, of other speeds selected, and both together. What is
 * sent at the time p comes back at before + p / speed. Rates stand to that of the programme as
 * those of a recording to one of 48 kHz.
 */
class SpeedRangeTest {

    private static final double CLEAN_S = 5e-6;

    private static final WrittenProgramme WRITTEN = WrittenProgramme.small();
    private static final Programme PROGRAMME = WRITTEN.programme();

    @ParameterizedTest
    @CsvSource({
        "0.8, 2.1, 12000",
        "0.8333333, 0.4, 12000",
        "0.92, 3, 11025",
        "1.06, 0.3, 12000",
        "1.2, 1.7, 12000",
        "0.5, 2.2, 12000",
        "2, 4.3, 24000",
        "2.35, 1, 24000",
        "0.42, 0.6, 12000",
        "1.5, 2, 24000",
    })
    void findsTheProgrammeAtAnySpeed(double speed, double before, int rate) {
        double seconds = before + WRITTEN.seconds() / speed + 2;
        double[] x = WRITTEN.returned(rate, seconds, t -> (t - before) * speed);
        MemoryAudio recording = new MemoryAudio("r", rate, WrittenProgramme.withHiss(x));
        Location found = Locator.locate(PROGRAMME, recording);
        double worst = 0;
        for (Cue cue : WRITTEN.sheet().cues()) {
            double p = WRITTEN.sheet().seconds(cue.startFrame());
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
