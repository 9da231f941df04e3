package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocatorRefusalTest {

    private static final String NOT_FOUND =
            "The programme was not found in x.wav. Check that this is the return of the programme in"
                    + " the folder given with --programme, that its level is not too low, and that"
                    + " the tape ran within 20 % of its speed or at half or twice that.";

    private static final String NO_MARKER =
            "x.wav sounds like the programme, but none of its markers is in it. Record the whole"
                    + " programme again, from before its first marker to after its last.";

    private static final int RATE = WrittenProgramme.RATE;

    private static final WrittenProgramme WRITTEN = WrittenProgramme.small();
    private static final Programme PROGRAMME = WRITTEN.programme();

    /** The return of a perfect machine. */
    private static double[] whole() {
        return WRITTEN.returned(WRITTEN.seconds(), t -> t);
    }

    @Test
    void silenceIsNoReturn() {
        assertRefused(
                "x.wav is silent from beginning to end. Check cables, input and record level, then"
                        + " record again.",
                new double[30 * RATE],
                new double[30 * RATE]);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 500})
    void nearlyNothingIsNoReturn(int frames) {
        assertRefused(
                "x.wav is cut short beyond use: it lasts 0.0 s, and the programme 16.5 s. Record the"
                        + " whole programme again, from before its first marker to after its last.",
                new double[frames],
                new double[frames]);
    }

    @Test
    void noiseIsNoReturn() {
        assertRefused(NOT_FOUND, new Random(1).doubles(40 * RATE, -0.1, 0.1).toArray());
    }

    @Test
    void aSteadyToneIsNoReturn() {
        double[] tone = new double[60 * RATE];
        Arrays.setAll(tone, i -> 0.1 * Math.sin(2 * Math.PI * 3150 * i / RATE));
        assertRefused(NOT_FOUND, tone);
    }

    /** A tape that was turned over, or a clip that was reversed. */
    @Test
    void theProgrammeBackwardsIsKnownAgain() {
        double[] sound = whole();
        double[] reversed = new double[sound.length];
        Arrays.setAll(reversed, i -> sound[sound.length - 1 - i]);
        assertRefused(
                "x.wav holds the programme backwards. Turn the reels over or play the other tracks, or"
                        + " leave out the reversal in the workstation, and record again.",
                reversed);
    }

    /** Tones that rise by a third every second, at the level of the programme. */
    @Test
    void otherMaterialIsNoReturn() {
        double[] scale = new double[60 * RATE];
        Arrays.setAll(
                scale,
                i -> {
                    double hz = 150 * Math.pow(1.26, i / RATE % 16);
                    return 0.1 * Math.sin(2 * Math.PI * hz * i / RATE);
                });
        assertRefused(NOT_FOUND, scale);
    }

    @Test
    void aReturnWithoutItsMarkersIsRefused() {
        double[] sound = whole();
        for (Cue.Marker m : WRITTEN.sheet().cues(Cue.Marker.class).toList()) {
            Arrays.fill(sound, (int) m.startFrame(), (int) m.endFrame(), 0);
        }
        assertRefused(NO_MARKER, sound, sound);
    }

    /** Neither the first 2 s nor the last 2 s, so neither marker. */
    @Test
    void aReturnCutAtBothEndsIsRefused() {
        double[] sound = whole();
        assertRefused(
                "x.wav is cut short: neither marker of the programme is in it. Record from before the"
                        + " first marker to after the last.",
                Arrays.copyOfRange(sound, 2 * RATE, sound.length - 2 * RATE));
    }

    /**
     * Another programme of ours, for slow tape: the same kinds of parts, but tones of 315 Hz for 1
     * kHz and in another order.
     */
    @Test
    void anotherProgrammeIsNoReturn() {
        WrittenProgramme other =
                new WrittenProgramme(
                        17.7,
                        WrittenProgramme.marker("start", 0.02),
                        WrittenProgramme.sweep("sweep", 0.8, 4, 40, 5500),
                        WrittenProgramme.tone("reference", 5.2, 5, 315),
                        WrittenProgramme.tone("right", 10.4, 2, 400),
                        WrittenProgramme.tone("speed", 12.7, 4, 3000),
                        WrittenProgramme.marker("end", 17.1));
        assertRefused(NOT_FOUND, other.returned(other.seconds(), t -> t));
    }

    /** A minute of chords in which nothing is the programme. */
    @Test
    void musicIsNoReturn() {
        double[][] music = Returns.ofSmall().of(RATE, 60, 0, 1, 0, 0).read(0, 59 * RATE);
        assertRefused(NOT_FOUND, music);
    }

    @Test
    void aSheetWithoutMarkersIsRefused() {
        CueSheet sheet = WRITTEN.sheet();
        List<Cue> cues = sheet.cues().stream().filter(c -> !(c instanceof Cue.Marker)).toList();
        CueSheet bare =
                new CueSheet(
                        sheet.sampleRateHz(), sheet.frames(), sheet.referenceDbfs(), null, cues);
        Programme programme = new Programme(bare, PROGRAMME.audio());
        assertEquals(
                "The cue sheet names no marker, so the programme cannot be placed. Write the"
                        + " programme again with \"offtape prepare\".",
                refusal(programme, new MemoryAudio("x.wav", RATE, whole())));
    }

    private static void assertRefused(String sentence, double[]... sound) {
        MemoryAudio recording = new MemoryAudio("x.wav", RATE, sound);
        assertEquals(sentence, refusal(PROGRAMME, recording));
    }

    private static String refusal(Programme programme, MemoryAudio recording) {
        return assertThrows(
                        UnusableInputException.class, () -> Locator.locate(programme, recording))
                .getMessage();
    }
}
