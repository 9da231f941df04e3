package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A programme of all kinds of parts, of which some are replaced by hiss. */
class SilentPartsTest {

    private static final int RATE = 16_000;

    private static final List<Cue> CUES =
            List.of(
                    new Cue.Tone("reference", ChannelSet.BOTH, at(0), at(2), 1000, 0),
                    new Cue.Tone("quiet", ChannelSet.BOTH, at(3), at(1), 1000, -20),
                    new Cue.Tone("deep", ChannelSet.BOTH, at(5), at(1), 100, -20),
                    new Cue.Sweep("sweep", ChannelSet.BOTH, at(7), at(3), 20, 7000, -20),
                    new Cue.Sweep("down", ChannelSet.RIGHT, at(11), at(3), 7000, 20, -10),
                    new Cue.Ladder(
                            "ladder",
                            ChannelSet.BOTH,
                            at(15),
                            at(3),
                            1000,
                            List.of(
                                    new Cue.Step(at(15), at(1), -10),
                                    new Cue.Step(at(16), at(1), 0),
                                    new Cue.Step(at(17), at(1), 10))));

    private static final CueSheet SHEET = new CueSheet(RATE, at(20), -18, null, CUES);
    private static final double[][] SOUND = new ProgrammeSignal(SHEET).read(0, (int) at(20));
    private static final Programme PROGRAMME =
            new Programme(SHEET, new MemoryAudio("programme", RATE, SOUND));

    private static long at(double seconds) {
        return Math.round(seconds * RATE);
    }

    /** The programme's own sound, 50 dB of hiss under the reference tone added. */
    private static double[][] heard() {
        Random random = new Random(1);
        double hiss = Math.pow(10, -68 / 20.0) / Math.sqrt(2);
        return Arrays.stream(SOUND)
                .map(x -> Arrays.stream(x).map(v -> v + hiss * random.nextGaussian()).toArray())
                .toArray(double[][]::new);
    }

    /** Sound off on a channel, but for a little noise. */
    private static void off(double[][] x, int channel, double from, double to) {
        Random random = new Random(2);
        for (int i = (int) at(from); i < at(to); i++) {
            x[channel][i] = 3e-4 * random.nextGaussian();
        }
    }

    private static void off(double[][] x, double from, double to) {
        off(x, 0, from, to);
        off(x, 1, from, to);
    }

    private static List<HealthNote> notes(double[][] x) {
        ProgrammeReturn ret =
                new ProgrammeReturn(
                        PROGRAMME,
                        new MemoryAudio("return.wav", RATE, x),
                        StraightReturn.place(0, 1, 20));
        return new SilentParts(ret, ReferenceLevels.measure(ret).orElseThrow())
                .note().stream().toList();
    }

    @Test
    void nothingIsSaidOfAWholeReturn() {
        assertEquals(List.of(), notes(heard()));
    }

    @ParameterizedTest
    @CsvSource({
        "3, 4, '\"quiet\" from 3.0 s to 4.0 s'",
        "7, 10, '\"sweep\" from 7.0 s to 10.0 s'",
        "11, 14, '\"down\" from 11.0 s to 14.0 s'",
        "15, 18, '\"ladder\" from 15.0 s to 18.0 s'",
        "2.9, 10, '\"quiet\" from 3.0 s to 4.0 s, \"sweep\" from 7.0 s to 10.0 s'",
    })
    void partsWithoutSoundAreNamed(double from, double to, String parts) {
        double[][] x = heard();
        off(x, from, to);
        List<HealthNote> notes = notes(x);
        assertEquals(1, notes.size());
        assertEquals("warning", notes.get(0).severity());
        assertEquals("silent-parts", notes.get(0).code());
        String start = "No sound is where parts of the programme should be: " + parts + ". What";
        assertTrue(notes.get(0).message().startsWith(start), notes.get(0).message());
    }

    /**
     * A machine may have no bass; sound that is there for a while counts; and one channel is
     * enough, since the other may be dead.
     */
    @Test
    void whatTheMachineMayTakeAwayIsNotTold() {
        double[][] x = heard();
        off(x, 5, 6);
        off(x, 3, 3.6);
        off(x, 0, 7, 10);
        assertEquals(List.of(), notes(x));
    }

    /** What sounds on a dead channel alone cannot return; the rest of it is on the other. */
    @Test
    void aDeadChannelHasNoSilentParts() {
        double[][] x = heard();
        off(x, 1, 0, 20);
        assertEquals(List.of(), notes(x));
    }

    /** The reference tone itself is told of elsewhere. */
    @Test
    void theReferenceIsNotAmongThem() {
        double[][] x = heard();
        off(x, 0, 2);
        assertEquals(List.of(), notes(x));
    }

    /** Nine decibels less than at the reference are a weak part, eleven are none. */
    @ParameterizedTest
    @CsvSource({"-9, false", "-11, true"})
    void tenDecibelsLessAreNothing(double db, boolean silent) {
        double[][] x = heard();
        for (double[] channel : x) {
            for (int i = (int) at(3); i < at(4); i++) {
                channel[i] *= Math.pow(10, db / 20);
            }
        }
        assertEquals(silent ? 1 : 0, notes(x).size());
    }
}
