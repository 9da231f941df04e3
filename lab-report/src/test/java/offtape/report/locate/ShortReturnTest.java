package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Returns of a programme of nine seconds. What is sent at the time p comes back at before + stretch
 * · p.
 */
class ShortReturnTest {

    private static final double CLEAN_S = 5e-6;

    private static final WrittenProgramme WRITTEN = WrittenProgramme.brief();
    private static final Programme PROGRAMME = WRITTEN.programme();

    /** A stretch of the programme as a tape plays it, in hiss, which goes on after it. */
    private static double[] heard(
            double seconds, double before, double stretch, double from, double to) {
        double[] x =
                WRITTEN.returned(
                        seconds,
                        t -> {
                            double p = (t - before) / stretch;
                            return p >= from && p < to ? p : -1;
                        });
        return WrittenProgramme.withHiss(x);
    }

    private static double[] whole(double seconds, double before, double stretch) {
        return heard(seconds, before, stretch, 0, 9);
    }

    private static double[] sum(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] + b[i]).toArray();
    }

    private static double[] times(double gain, double[] x) {
        return Arrays.stream(x).map(v -> gain * v).toArray();
    }

    private static Location locate(double[]... channels) {
        return Locator.locate(PROGRAMME, WrittenProgramme.recording(channels));
    }

    private static Cue cue(String id) {
        return WRITTEN.sheet().cues().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static void assertPlaced(double before, double stretch, double within, Location found) {
        for (Cue cue : WRITTEN.sheet().cues()) {
            double p = WRITTEN.sheet().seconds(cue.startFrame());
            assertEquals(before + stretch * p, found.map().recordingSeconds(p), within, cue.id());
        }
    }

    /** At usual speeds, and at those that are sought only if nothing is found there. */
    @ParameterizedTest
    @CsvSource({"0.7, 1", "0.3, 1.04", "1, 1.2"})
    void theWholeProgrammeIsFound(double before, double stretch) {
        double length = before + 9 * stretch + 1;
        Location found = locate(whole(length, before, stretch));
        assertPlaced(before, stretch, CLEAN_S, found);
        assertEquals(before, found.delaySeconds(), CLEAN_S);
        assertTrue(Math.abs(before - found.delaySeconds()) <= found.delayUncertaintySeconds());
        assertEquals(1 / stretch, found.map().speedRatio(4.5), 5e-5);
        assertEquals(List.of(1), found.signs());
        assertTrue(found.startMarkerFound() && found.endMarkerFound());
        assertEquals(length, found.recordingSeconds(), 1e-4);
        assertEquals(0, found.heardFromSeconds());
        assertEquals(found.recordingSeconds(), found.heardToSeconds());
        assertEquals(List.of(), found.takes());
        assertEquals(2, found.markers().size());
        assertEquals(0, found.markers().get(1).lateSeconds(), 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"-0.8, 0.5", "0.5, 0", "0, -0.5"})
    void polarityIsToldByChannel(double left, double right) {
        double[] x = WRITTEN.returned(10, t -> t - 0.5);
        Location found = locate(times(left, x), times(right, x));
        assertEquals(List.of((int) Math.signum(left), (int) Math.signum(right)), found.signs());
        assertEquals(0.5, found.delaySeconds(), CLEAN_S);
    }

    /** The first marker lies before the recording, the start with it. */
    @Test
    void aCutStartIsFoundFromTheRest() {
        Location found = locate(whole(8.5, -1.3, 1));
        assertFalse(found.startMarkerFound());
        assertTrue(found.endMarkerFound());
        assertPlaced(-1.3, 1, 1e-3, found);
        assertEquals(0, found.heardFromSeconds());
        assertEquals(-1.3, found.delaySeconds(), found.delayUncertaintySeconds());
        assertFalse(found.covers(cue("start"), WrittenProgramme.RATE));
        assertFalse(found.covers(cue("first"), WrittenProgramme.RATE));
        assertTrue(found.covers(cue("second"), WrittenProgramme.RATE));
    }

    /** The tape is started late while the recording runs: the second tone is the first heard. */
    @Test
    void beforeALateStartNothingIsHeard() {
        Location found = locate(heard(11, 1, 1, 2.25, 9));
        assertFalse(found.startMarkerFound());
        assertEquals(3.3, found.heardFromSeconds(), 0.2);
        assertEquals(11, found.heardToSeconds(), 1e-9);
        assertPlaced(1, 1, 1e-3, found);
    }

    /**
     * Stopped after the second tone or in the last while the recording runs on: there it ends. The
     * tone that breaks off tells neither speed nor wow, so the start is known as well as ever.
     */
    @ParameterizedTest
    @CsvSource({"3.9, 3.8", "7, 7"})
    void afterABreakNothingIsHeard(double stopped, double lastSound) {
        Location found = locate(heard(14, 1, 1, 0, stopped));
        assertTrue(found.startMarkerFound());
        assertFalse(found.endMarkerFound());
        assertEquals(0, found.heardFromSeconds());
        assertEquals(1 + lastSound, found.heardToSeconds(), 0.25);
        assertEquals(1, found.delaySeconds(), CLEAN_S);
        assertTrue(found.delayUncertaintySeconds() < 1e-5);
    }

    /** The recording ends within the last marker: all of it holds the programme. */
    @Test
    void aRecordingThatEndsWithTheLastSoundIsHeardToItsEnd() {
        Location found = locate(whole(9.35, 1, 1));
        assertFalse(found.endMarkerFound());
        assertEquals(9.35, found.heardToSeconds(), 1e-9);
    }

    /** The same recording gives the same to the last bit. */
    @Test
    void aCutEndIsFoundFromTheRest() {
        double[] x = whole(7.6, 1, 1);
        Location found = locate(x);
        assertEquals(found.delaySeconds(), locate(x).delaySeconds(), 0, "not repeatable");
        assertTrue(found.startMarkerFound());
        assertFalse(found.endMarkerFound());
        assertPlaced(1, 1, 1e-3, found);
        assertFalse(found.covers(cue("third"), WrittenProgramme.RATE));
        assertTrue(found.covers(cue("sweep"), WrittenProgramme.RATE));
        assertTrue(found.heardToSeconds() <= 7.6 && found.heardToSeconds() > 7.2);
    }

    /** The first is clearer, so it is found first; the last whole one is measured all the same. */
    @Test
    void theLastWholeTakeIsMeasuredThoughAnotherIsClearer() {
        double[] noisy = heard(22, 12, 1, 0, 9);
        Random random = new Random(8);
        for (int i = 12 * WrittenProgramme.RATE; i < noisy.length; i++) {
            noisy[i] += 0.02 * random.nextGaussian();
        }
        Location found = locate(sum(heard(22, 1, 1, 0, 9), noisy));
        assertEquals(2, found.takes().size(), found.takes().toString());
        assertEquals(12, found.delaySeconds(), 1e-4);
        assertPlaced(12, 1, 1e-3, found);
        assertTrue(found.startMarkerFound() && found.endMarkerFound());
    }

    /** Of whole takes the last, else the last of the longest; each is told with its place. */
    @ParameterizedTest
    @CsvSource({"5, 9, 12", "9, 5, 1", "7, 7.2, 12"})
    void theRightTakeIsMeasured(double first, double second, double start) {
        double[] both = sum(heard(22, 1, 1, 0, first), heard(22, 12, 1, 0, second));
        Location found = locate(both);
        assertEquals(start, found.delaySeconds(), 2 * CLEAN_S);
        assertEquals(2, found.takes().size(), found.takes().toString());
        assertEquals(1, found.takes().get(0).fromSeconds(), 0.2);
        assertEquals(12, found.takes().get(1).fromSeconds(), 0.2);
        assertEquals(first == 9, found.takes().get(0).whole());
        assertEquals(second == 9, found.takes().get(1).whole());
        assertPlaced(start, 1, 1e-3, found);
    }

    private static void assertRefused(String start, double[]... channels) {
        MemoryAudio recording = WrittenProgramme.recording(channels);
        String said =
                assertThrows(
                                UnusableInputException.class,
                                () -> Locator.locate(PROGRAMME, recording))
                        .getMessage();
        assertTrue(said.startsWith(start), said);
    }

    @Test
    void whatIsNotTheProgrammeIsRefused() {
        double[] noise = new Random(1).doubles(120_000, -0.1, 0.1).toArray();
        assertRefused("The programme was not found in return.wav.", noise);
    }

    /** Less than three seconds out of its middle, which are under a quarter of its sound. */
    @Test
    void tooLittleOfItIsRefused() {
        assertRefused("The programme was not found in return.wav.", heard(9, 0, 1, 4.2, 6.5));
    }

    @Test
    void theProgrammeBackwardsIsKnownAgain() {
        double[] x = whole(10, 0.5, 1);
        double[] back = new double[x.length];
        Arrays.setAll(back, i -> x[x.length - 1 - i]);
        assertRefused("return.wav holds the programme backwards.", back);
    }

    /** Both markers are silent; that the tape ran at half the speed may be why. */
    @Test
    void aReturnWithoutMarkersIsRefused() {
        assertRefused(
                "return.wav sounds like the programme, but none of its markers is in it. The tape"
                        + " ran at half the speed",
                heard(20, 0.5, 2, 0.75, 8.1));
    }

    /** Three percent longer than the pitch says, which no tape does. */
    @Test
    void aReturnThatWasStretchedIsRefused() {
        Cue[] cues = new Cue[12];
        cues[0] = WrittenProgramme.marker("start", 0.2);
        for (int k = 1; k <= 10; k++) {
            cues[k] = WrittenProgramme.tone("t" + k, k, 1, 300 * Math.pow(2, k % 4));
        }
        cues[11] = WrittenProgramme.marker("end", 11.2);
        WrittenProgramme steps = new WrittenProgramme(12, cues);
        Programme programme = steps.programme();
        MemoryAudio recording = WrittenProgramme.recording(steps.lengthened(13.5, 0.5, 1.03));
        String said =
                assertThrows(
                                UnusableInputException.class,
                                () -> Locator.locate(programme, recording))
                        .getMessage();
        String wanted =
                "return.wav lasts about (2.9|3.0|3.1) % longer than the pitch of its tones.*";
        assertTrue(said.matches(wanted), said);
    }
}
