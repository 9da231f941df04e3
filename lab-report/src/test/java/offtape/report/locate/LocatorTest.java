package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.SincInterpolator;
import offtape.core.programme.Cue;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A programme sent at the time p comes back at before + p / speed: that is the whole truth of these
 * returns, and each cue's start is held against it. The bound of 1 ms is the one that the measures
 * need to stay inside their cues; clean returns are held to 5 µs.
 */
class LocatorTest {

    private static final double CUE_START_S = 1e-3;

    /** What delay and cues hold on returns without wow. */
    private static final double CLEAN_S = 5e-6;

    private static Returns returns;

    @BeforeAll
    static void generate() {
        returns = Returns.ofBrief();
    }

    @ParameterizedTest
    @CsvSource({
        "48000, 0, 1",
        "48000, 2.5, 1.03",
        "44100, 3.3, 0.985",
    })
    void findsTheProgrammeAtPlaceAndSpeed(int rate, double before, double speed) {
        MemoryAudio recording = returns.of(rate, before, 3, speed, 0.8, 0.5);
        Location found = Locator.locate(returns.programme(), recording);
        double worst = worst(found, before, speed);
        System.out.printf(
                "located at %d Hz, speed %.4f: cues within %.1f µs, delay within %.2f µs%n",
                rate, speed, 1e6 * worst, 1e6 * Math.abs(found.delaySeconds() - before));
        assertTrue(worst < CLEAN_S, "worst cue start " + worst);
        assertEquals(before, found.delaySeconds(), CLEAN_S);
        assertTrue(Math.abs(before - found.delaySeconds()) <= found.delayUncertaintySeconds());
        assertEquals(speed, found.map().speedRatio(30), 2e-5);
        assertEquals(List.of(1, 1), found.signs());
        assertTrue(found.startMarkerFound() && found.endMarkerFound());
    }

    @Test
    void polarityIsToldByChannel() {
        Location found = locate(returns.of(Returns.RATE, 7.3218, 1, 1, -0.8, 0.5));
        assertEquals(List.of(-1, 1), found.signs());
        assertTrue(worst(found, 7.3218, 1) < CLEAN_S);
    }

    @Test
    void aDeadChannelIsNotHeard() {
        Location found = locate(returns.of(Returns.RATE, 2, 1, 1.01, 0, -0.5));
        assertEquals(List.of(0, -1), found.signs());
        assertTrue(worst(found, 2, 1.01) < CLEAN_S);
    }

    @Test
    void oneChannelIsEnough() {
        double[][] both = returns.of(Returns.RATE, 1, 1, 1, 0.5, 0.5).read(0, 70 * Returns.RATE);
        Location found = locate(new MemoryAudio("mono.wav", Returns.RATE, both[0]));
        assertEquals(List.of(1), found.signs());
        assertTrue(worst(found, 1, 1) < CLEAN_S);
    }

    /** The first 2 s, and with them the marker, are missing: the start lies before the file. */
    @Test
    void aCutStartIsFoundFromTheRest() {
        Location found = locate(cut(2, returns.seconds()));
        assertFalse(found.startMarkerFound());
        assertTrue(found.endMarkerFound());
        assertTrue(worst(found, -2, 1) < CUE_START_S, "worst " + worst(found, -2, 1));
        assertFalse(found.covers(cue("start"), Returns.RATE));
        assertTrue(found.covers(cue("speed"), Returns.RATE));
    }

    /** The last 12 s are missing. */
    @Test
    void aCutEndIsFoundFromTheRest() {
        MemoryAudio recording = cut(0, returns.seconds() - 12);
        Location found = locate(recording);
        assertEquals(found.delaySeconds(), locate(recording).delaySeconds(), 0, "not repeatable");
        assertTrue(found.startMarkerFound());
        assertFalse(found.endMarkerFound());
        assertTrue(worst(found, 0, 1) < CUE_START_S, "worst " + worst(found, 0, 1));
        assertFalse(found.covers(cue("speed"), Returns.RATE));
        assertTrue(found.covers(cue("reference"), Returns.RATE));
    }

    /** A minute and more of other material on both sides, four times the programme's own length. */
    @Test
    void otherMaterialOnBothSidesDoesNotMislead() {
        Returns small = Returns.ofSmall();
        MemoryAudio recording = small.of(Returns.RATE, 65.4321, 40, 0.997, 0.2, 0.2);
        Location found = Locator.locate(small.programme(), recording);
        assertEquals(65.4321, found.delaySeconds(), CLEAN_S);
        assertEquals(0, found.takes().size());
    }

    /**
     * Wow of 0.3 % peak at 0.6 Hz moves time by 0.003 / (2π · 0.6) = 0.8 ms and bends the readings
     * of speed. The measures leave 30 ms at either end of a part; a sixth of it may be used up.
     */
    @Test
    void wowDoesNotMislead() {
        double[][] sound = returns.sound();
        double[] out = new double[sound[0].length];
        for (int i = 0; i < out.length; i++) {
            double t = (double) i / Returns.RATE;
            double shift = 0.003 / (1.2 * Math.PI) * Math.sin(1.2 * Math.PI * t);
            out[i] = SincInterpolator.at(sound[0], (t + shift) * Returns.RATE);
        }
        Location found = locate(new MemoryAudio("wow.wav", Returns.RATE, out, out.clone()));
        double worst = worst(found, 0, 1);
        System.out.printf("located under wow: cues within %.0f µs%n", 1e6 * worst);
        assertTrue(worst < 0.005, "worst " + worst);
        assertEquals(0, found.delaySeconds(), found.delayUncertaintySeconds());
    }

    private static MemoryAudio cut(double from, double to) {
        double[][] sound = returns.sound();
        double[][] kept = new double[2][];
        for (int c = 0; c < 2; c++) {
            kept[c] =
                    Arrays.copyOfRange(
                            sound[c], (int) (from * Returns.RATE), (int) (to * Returns.RATE));
        }
        return new MemoryAudio("cut.wav", Returns.RATE, kept);
    }

    private static Location locate(MemoryAudio recording) {
        return Locator.locate(returns.programme(), recording);
    }

    private static Cue cue(String id) {
        return returns.programme().sheet().cues().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** The largest error of a cue's start, seconds. */
    private static double worst(Location found, double before, double speed) {
        double worst = 0;
        for (Cue cue : returns.programme().sheet().cues()) {
            double p = (double) cue.startFrame() / Returns.RATE;
            double error = found.map().recordingSeconds(p) - (before + p / speed);
            worst = Math.max(worst, Math.abs(error));
        }
        return worst;
    }
}
