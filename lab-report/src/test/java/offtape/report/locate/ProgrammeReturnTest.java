package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A programme of ten seconds, three tones of two seconds, in returns whose place is given. */
class ProgrammeReturnTest {

    private static final int RATE = 1000;

    private static final Cue.Tone LOW = tone("low", 1, 2000, 100);
    private static final Cue.Tone HIGH = tone("high", 4, 2500, 400);
    private static final Cue.Tone LAST = tone("last", 7, 2000, 100);
    private static final CueSheet SHEET =
            new CueSheet(RATE, 10_000, -18, null, List.of(LOW, HIGH, LAST));

    private static Cue.Tone tone(String id, long fromSeconds, long frames, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, fromSeconds * RATE, frames, hz, 0);
    }

    /** A return at 100 frames a second whose samples count the frames, per channel. */
    private static ProgrammeReturn at(
            double offset, double stretch, int channels, double seconds, double heardTo) {
        double[][] sound = new double[channels][(int) (100 * seconds)];
        for (int c = 0; c < channels; c++) {
            int sign = 1 - 2 * c;
            Arrays.setAll(sound[c], i -> sign * i);
        }
        Location location =
                new Location(
                        TimeMap.straight(offset, stretch, 10),
                        seconds,
                        offset,
                        0,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        heardTo,
                        List.of());
        Programme programme = new Programme(SHEET, new MemoryAudio("p", RATE, new double[10_000]));
        return new ProgrammeReturn(programme, new MemoryAudio("r", 100, sound), location);
    }

    @Test
    void itKnowsItsParts() {
        ProgrammeReturn whole = at(0, 1, 2, 10, 10);
        assertSame(SHEET, whole.sheet());
        assertSame(whole.location().map(), whole.map());
        assertEquals("left", ProgrammeReturn.channelName(0));
        assertEquals("right", ProgrammeReturn.channelName(1));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "2, 2", "3, 2"})
    void oneOrTwoChannelsAreMeasured(int recorded, int measured) {
        assertEquals(measured, at(0, 1, recorded, 10, 10).channels());
    }

    @Test
    void theCuesOfAKindThatAreWholeAreGivenInOrder() {
        assertEquals(List.of(LOW, HIGH, LAST), at(0, 1, 1, 10, 10).cues(Cue.Tone.class));
        assertEquals(List.of(LOW, HIGH), at(0, 1, 1, 8, 8).cues(Cue.Tone.class));
        assertEquals(List.of(HIGH, LAST), at(-2, 1, 1, 8, 8).cues(Cue.Tone.class));
        assertEquals(List.of(), at(0, 1, 1, 10, 10).cues(Cue.Sweep.class));
    }

    /** Told of a cue that is not whole; at 9 s the last one ends. */
    @ParameterizedTest
    @CsvSource({
        "-7.5, 1, 3, 3, The recording begins after the part \"last\" of the programme.",
        "0, 1, 8, 8, 'The recording ends at 8.0 s, before the end of the part \"last\" of the"
                + " programme.'",
        "0, 1, 12, 7.5, 'The programme breaks off at 7.5 s of the recording, before the end of its"
                + " part \"last\".'",
        // a map that reaches beyond the recording: the earlier of the two ends counts
        "0, 1, 8, 12, 'The recording ends at 8.0 s, before the end of the part \"last\" of the"
                + " programme.'",
        // twice as slow it ends at 18 s, of which the recording has 18
        "0, 2, 18, 18, The recording begins after the part \"last\" of the programme.",
    })
    void aCueThatIsNotWholeIsExplained(
            double offset, double stretch, double seconds, double heardTo, String sentence) {
        assertEquals(sentence, at(offset, stretch, 1, seconds, heardTo).whyMissing(LAST));
    }

    /** The longest of those that would tell, and only if it is not there. */
    @Test
    void theLongestMissingCueIsTold() {
        String ends =
                "The recording ends at 0.5 s, before the end of the part \"%s\" of the programme.";
        ProgrammeReturn none = at(0, 1, 1, 0.5, 0.5);
        assertEquals(
                String.format(ends, "high"), none.whyMissing(Cue.Tone.class, t -> true, "other"));
        assertEquals(
                String.format(ends, "low"),
                none.whyMissing(Cue.Tone.class, t -> t == LOW, "other"));
        assertEquals("other", none.whyMissing(Cue.Tone.class, t -> false, "other"));
        assertEquals("other", none.whyMissing(Cue.Sweep.class, t -> true, "other"));
        ProgrammeReturn whole = at(0, 1, 1, 10, 10);
        assertEquals("other", whole.whyMissing(Cue.Tone.class, t -> true, "other"));
    }

    /** From 2 + 1.5 · 4 = 8 s on for 1.5 · 2 = 3 s. */
    @Test
    void aSpanLiesWhereTheMapHasItLessItsMargins() {
        ProgrammeReturn slow = at(2, 1.5, 1, 20, 20);
        assertEquals(new ProgrammeReturn.Span(8, 11), slow.span(4000, 2000, 0));
        assertEquals(new ProgrammeReturn.Span(8.25, 10.75), slow.span(4000, 2000, 0.25));
        // margins longer than the stretch leave nothing, at its start
        assertEquals(new ProgrammeReturn.Span(10, 10), slow.span(4000, 2000, 2));
        assertEquals(0, slow.span(4000, 2000, 2).seconds());
    }

    @Test
    void theBeginningOfASpanIsCutToALength() {
        ProgrammeReturn.Span span = new ProgrammeReturn.Span(3, 7);
        assertEquals(4, span.seconds());
        assertEquals(new ProgrammeReturn.Span(3, 4.5), span.beginning(1.5));
        assertSame(span, span.beginning(4));
        assertSame(span, span.beginning(5));
    }

    /** A knot at 5 s: the middle of a stretch from 4 s on lies before or behind it. */
    @Test
    void theSpeedIsThatOfTheMiddleOfAStretch() {
        ProgrammeReturn straight = at(0, 1, 1, 10, 10);
        Location bent =
                new Location(
                        new TimeMap(new double[] {0, 5, 10}, new double[] {0, 4, 14}),
                        14,
                        0,
                        0,
                        List.of(1),
                        true,
                        true,
                        0,
                        14,
                        List.of());
        ProgrammeReturn r = new ProgrammeReturn(straight.programme(), straight.recording(), bent);
        assertEquals(1.25, r.speedRatio(4000, 1998), 1e-12);
        assertEquals(0.5, r.speedRatio(4000, 2000), 1e-12);
    }

    /** From 1.234 s to 1.3 s: frames 123 to 129, seven of them. */
    @Test
    void aSpanIsReadFromAllChannels() {
        double[][] read = at(0, 1, 2, 10, 10).read(new ProgrammeReturn.Span(1.234, 1.3));
        assertEquals(2, read.length);
        assertArrayEquals(new double[] {123, 124, 125, 126, 127, 128, 129}, read[0]);
        assertArrayEquals(new double[] {-123, -124, -125, -126, -127, -128, -129}, read[1]);
    }
}
