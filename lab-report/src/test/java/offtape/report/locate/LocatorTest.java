package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A programme sent at the time p comes back at before + p / speed: that is the whole truth of these
 * returns, and each cue's start is held against it. Clean returns are held to 5 µs. What a return
 * lacks or has besides is in {@code ShortReturnTest}.
 */
class LocatorTest {

    /** What delay and cues hold on returns without wow. */
    private static final double CLEAN_S = 5e-6;

    /** Programmes as they are written, the brief one and a smaller, at rates of recordings. */
    @ParameterizedTest
    @CsvSource({
        "true, 44100, 3.3, 0.985",
        "false, 48000, 2.5, 1.03",
    })
    void findsTheProgrammeAtPlaceAndSpeed(boolean brief, int rate, double before, double speed) {
        Returns returns = brief ? Returns.ofBrief() : Returns.ofSmall();
        MemoryAudio recording = returns.of(rate, before, 3, speed, 0.8, 0.5);
        Location found = Locator.locate(returns.programme(), recording);
        double worst = worst(returns.programme().sheet(), found, before, speed);
        System.out.printf(
                "located at %d Hz, speed %.4f: cues within %.1f µs, delay within %.2f µs%n",
                rate, speed, 1e6 * worst, 1e6 * Math.abs(found.delaySeconds() - before));
        assertTrue(worst < CLEAN_S, "worst cue start " + worst);
        assertEquals(before, found.delaySeconds(), CLEAN_S);
        assertTrue(Math.abs(before - found.delaySeconds()) <= found.delayUncertaintySeconds());
        assertEquals(speed, found.map().speedRatio(12), 2e-5);
        assertEquals(List.of(1, 1), found.signs());
        assertTrue(found.startMarkerFound() && found.endMarkerFound());
    }

    /** A minute and more of music before it and after, six times the programme's own length. */
    @Test
    void otherMaterialOnBothSidesDoesNotMislead() {
        WrittenProgramme small = WrittenProgramme.small();
        int rate = WrittenProgramme.RATE;
        double[] music = Returns.ofSmall().of(rate, 65.9, 40, 1, 0, 0).read(0, 122 * rate)[0];
        double[] sound = small.returned(122, t -> (t - 65.9321) * 0.997);
        Arrays.setAll(sound, i -> music[i] + 0.2 * sound[i]);
        Location found = Locator.locate(small.programme(), WrittenProgramme.recording(sound));
        assertEquals(65.9321, found.delaySeconds(), CLEAN_S);
        assertEquals(0, found.takes().size());
    }

    /**
     * Wow of 0.3 % peak at 0.6 Hz moves time by 0.003 / (2π · 0.6) = 0.8 ms and bends the readings
     * of speed. The measures leave 30 ms at either end of a part; a sixth of it may be used up.
     */
    @Test
    void wowDoesNotMislead() {
        WrittenProgramme small = WrittenProgramme.small();
        double[] sound =
                small.returned(
                        16.5, t -> t + 0.003 / (1.2 * Math.PI) * Math.sin(1.2 * Math.PI * t));
        Location found = Locator.locate(small.programme(), WrittenProgramme.recording(sound));
        double worst = worst(small.sheet(), found, 0, 1);
        System.out.printf("located under wow: cues within %.0f µs%n", 1e6 * worst);
        assertTrue(worst < 0.005, "worst " + worst);
        assertEquals(0, found.delaySeconds(), found.delayUncertaintySeconds());
    }

    /** The largest error of a cue's start, seconds. */
    private static double worst(CueSheet sheet, Location found, double before, double speed) {
        double worst = 0;
        for (Cue cue : sheet.cues()) {
            double p = sheet.seconds(cue.startFrame());
            double error = found.map().recordingSeconds(p) - (before + p / speed);
            worst = Math.max(worst, Math.abs(error));
        }
        return worst;
    }
}
