package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.channel.Polarity;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HealthCheckTest {

    private static final int RATE = StraightReturn.RATE;
    private static final Polarity UPRIGHT = new Polarity(List.of(1, 1));
    private static final Speed STEADY = drift(Quantity.known(0.05, "%", 0.01));
    private static final double[] SOUND = StraightReturn.sound();

    private static Speed drift(Quantity drift) {
        return new Speed(
                null, drift, null, null, null, null, null, null, null, null, null, List.of(), null,
                null, null, null, null, null, null, null, null, List.of());
    }

    private static ReferenceLevels returnedAt(double... dbfs) {
        double[] peaks = Arrays.stream(dbfs).map(db -> Math.pow(10, db / 20)).toArray();
        return new ReferenceLevels(
                StraightReturn.tone("first"), peaks, Complex.ZERO, new double[peaks.length]);
    }

    /** All but the note that the rate of 8 kHz earns. */
    private static List<HealthNote> notes(
            ProgrammeReturn ret, ReferenceLevels reference, Speed speed, Polarity polarity) {
        return new HealthCheck(ret)
                .notes(reference, speed, polarity, new CrosstalkMeasure(ret, reference)).stream()
                        .filter(n -> !n.code().equals("narrow-band"))
                        .toList();
    }

    /** The sound is as loud as the reference tone says, on the right by half as loud. */
    private static List<HealthNote> notes(ReferenceLevels reference) {
        double sent = Math.pow(10, -18 / 20.0);
        double heard = reference == null ? sent : Arrays.stream(reference.peaks()).max().orElse(0);
        double louder = heard / sent;
        double[] left = Arrays.stream(SOUND).map(x -> louder * x).toArray();
        double[] right = Arrays.stream(left).map(x -> x / 2).toArray();
        return notes(StraightReturn.of(left, right), reference, STEADY, UPRIGHT);
    }

    private static double[] half() {
        return Arrays.stream(SOUND).map(x -> x / 2).toArray();
    }

    private static HealthNote only(List<HealthNote> notes) {
        assertEquals(1, notes.size(), notes.toString());
        return notes.get(0);
    }

    @Test
    void aGoodRecordingNeedsNoWord() {
        assertEquals(List.of(), notes(returnedAt(-18, -18)));
    }

    @ParameterizedTest
    @CsvSource({
        "-6.1, ''",
        "-5.9, too-loud",
        "-44.9, ''",
        "-45.1, too-quiet",
    })
    void aLevelOutOfTheConvertersBestRangeIsTold(double dbfs, String code) {
        String codes =
                notes(returnedAt(dbfs, dbfs)).stream()
                        .map(HealthNote::code)
                        .distinct()
                        .collect(Collectors.joining(","));
        assertEquals(code, codes);
    }

    @Test
    void theLevelIsToldBesideTheOneThatWasSent() {
        HealthNote note = only(notes(returnedAt(-9, -4)));
        assertEquals("warning", note.severity());
        assertTrue(
                note.message()
                        .startsWith(
                                "The reference tone returns at -4.0 dBFS on the right channel; it"
                                        + " was sent at -18.0 dBFS."),
                note.message());
    }

    /** The tone that is at 2 s in the programme was not heard, and another took its place. */
    @Test
    void anotherToneThatTellsTheLevelIsNamed() {
        double[] peaks = {0.1, 0.1};
        ReferenceLevels second =
                new ReferenceLevels(
                        StraightReturn.tone("second"), peaks, Complex.ZERO, new double[2]);
        HealthNote note = only(notes(second));
        assertEquals("warning", note.severity());
        assertEquals("reference-elsewhere", note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "The reference tone (part \"first\"), which should sound at 2.0 s,"
                                        + " was not heard on any channel. Levels are told by the"
                                        + " tone of 1000 Hz at 4.0 s in its place."),
                note.message());
    }

    /** Ten decibels between the channels are a fault, which way round is said. */
    @ParameterizedTest
    @CsvSource({"-10, -19.9, ''", "-10, -20.1, right", "-20.1, -10, left"})
    void aWeakChannelIsNamed(double left, double right, String weak) {
        List<HealthNote> notes = notes(returnedAt(left, right));
        if (weak.isEmpty()) {
            assertEquals(List.of(), notes);
        } else {
            assertEquals("weak-channel", only(notes).code());
            assertTrue(
                    notes.get(0)
                            .message()
                            .startsWith(
                                    "The "
                                            + weak
                                            + " channel returns the reference tone 10.1 dB weaker"),
                    notes.get(0).message());
        }
    }

    @ParameterizedTest
    @CsvSource({"0, left", "1, right"})
    void aDeadChannelIsNotAlsoQuietOrWeak(int dead, String name) {
        double[] dbfs = {-18, -18};
        dbfs[dead] = Double.NEGATIVE_INFINITY;
        HealthNote note = only(notes(returnedAt(dbfs)));
        assertEquals("blocking", note.severity());
        assertEquals("dead-channel", note.code());
        assertTrue(note.message().startsWith("The " + name + " channel is dead"));
    }

    @Test
    void withoutAReferenceToneNoLevelCanBeTold() {
        HealthNote note = only(notes(null));
        assertEquals("blocking", note.severity());
        assertEquals("no-reference", note.code());
    }

    @Test
    void theInvertedChannelIsNamed() {
        ProgrammeReturn ret = StraightReturn.of(SOUND, half());
        ReferenceLevels good = returnedAt(-18, -18);
        HealthNote first = only(notes(ret, good, STEADY, new Polarity(List.of(-1, 1))));
        assertEquals("opposite-channels", first.code());
        assertTrue(first.message().contains("wiring of the left channel"));
        HealthNote second = only(notes(ret, good, STEADY, new Polarity(List.of(1, -1))));
        assertTrue(second.message().contains("wiring of the right channel"));
        assertEquals(List.of(), notes(ret, good, STEADY, new Polarity(List.of(-1, -1))));
        assertEquals(List.of(), notes(ret, good, STEADY, new Polarity(List.of(0, -1))));
    }

    /** A tone that was sent on one channel alone comes back on the other. */
    @Test
    void exchangedChannelsAreTold() {
        Programme programme =
                new BriefProgramme().alone(ChannelSet.LEFT).alone(ChannelSet.RIGHT).made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.4);
        ReferenceLevels good = returnedAt(-24, -26);
        assertEquals(
                List.of(), notes(BriefProgramme.returned(programme, sound), good, STEADY, UPRIGHT));
        ProgrammeReturn exchanged = BriefProgramme.returned(programme, sound[1], sound[0]);
        HealthNote note = only(notes(exchanged, good, STEADY, UPRIGHT));
        assertEquals("swapped-channels", note.code());
        assertEquals("warning", note.severity());
        assertTrue(note.message().startsWith("Left and right are exchanged"), note.message());
    }

    @Test
    void aDriftBeyondThreeTenthsOfAPercentIsTold() {
        ProgrammeReturn ret = StraightReturn.of(SOUND, half());
        ReferenceLevels good = returnedAt(-18, -18);
        Speed small = drift(Quantity.known(0.3, "%", 0.01));
        assertEquals(List.of(), notes(ret, good, small, UPRIGHT));
        Speed large = drift(Quantity.known(0.31, "%", 0.01));
        HealthNote note = only(notes(ret, good, large, UPRIGHT));
        assertEquals("drift", note.code());
        assertTrue(note.message().contains("drifts by 0.31 %"));
        Speed unread = drift(Quantity.unknown("No tone."));
        assertEquals(List.of(), notes(ret, good, unread, UPRIGHT));
    }

    /**
     * Four samples in a row at ±0.9 are clipping where the programme is: from 1 s to 21 s of the
     * recording, whose frames at 20.9 s are 167,200 and so in the third block that is read.
     */
    @Test
    void clippingIsToldOverTheProgrammeAlone() {
        double[] left = new double[22 * RATE];
        double[] right = new double[22 * RATE];
        for (int i = 0; i < left.length; i++) {
            left[i] = 0.1 * Math.sin(0.3 * i);
            right[i] = 0.1 * Math.sin(0.3 * i + 1);
        }
        plateau(right, RATE / 2);
        plateau(right, 43 * RATE / 2);
        assertEquals(List.of(), afterOneSecond(left, right));
        plateau(right, 209 * RATE / 10);
        HealthNote note = only(afterOneSecond(left, right));
        assertEquals("warning", note.severity());
        assertEquals("clipping", note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "The right channel is clipped in 1 places, first at 20.90 s, at"
                                        + " -0.9 dBFS"),
                note.message());
    }

    private static List<HealthNote> afterOneSecond(double[] left, double[] right) {
        ProgrammeReturn ret =
                StraightReturn.in(
                        new MemoryAudio("r.wav", RATE, left, right),
                        StraightReturn.place(1, 1, 22));
        return notes(ret, returnedAt(-18, -18), STEADY, UPRIGHT);
    }

    private static void plateau(double[] x, int at) {
        Arrays.fill(x, at, at + 4, 0.9);
    }

    @Test
    void theMostSevereComesFirst() {
        ProgrammeReturn ret =
                StraightReturn.in(
                        new MemoryAudio("r.wav", RATE, SOUND, SOUND),
                        StraightReturn.place(0, 1, 20, false, false, List.of()));
        List<String> severities =
                notes(ret, returnedAt(-18, Double.NEGATIVE_INFINITY), STEADY, UPRIGHT).stream()
                        .map(HealthNote::severity)
                        .toList();
        assertEquals(List.of("blocking", "warning", "note", "note"), severities);
    }
}
