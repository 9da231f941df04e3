package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the reader of a tape's figures should know. */
class TapeNotesTest {

    /** How each note begins. */
    private static final Map<String, String> BEGINS =
            Map.ofEntries(
                    Map.entry("one tone", "The recording holds one steady tone only"),
                    Map.entry("accuracy", "How accurate the tape's own frequencies are"),
                    Map.entry("mono", "The recording has one channel only"),
                    Map.entry("same", "Both channels hold the same tones exactly"),
                    Map.entry("inverted", "The channels are of opposite polarity"),
                    Map.entry("no left", "No tone is heard on the left channel."),
                    Map.entry("no right", "No tone is heard on the right channel."),
                    Map.entry(
                            "jumps 2",
                            "The level jumps in places (dropouts, clicks); these are"
                                    + " left out of the levels of: tone 2 (8000 Hz)."),
                    Map.entry(
                            "clipped 1",
                            "At full scale, and so perhaps clipped: tone 1 (1000 Hz)."));

    private static final TapeQuestion PLAIN = TapeQuestion.PLAIN;

    /** A tone with what is to be told of it. */
    private static NamedTone tone(
            int number,
            double hz,
            Quantity difference,
            Double phase,
            double leftOut,
            double... db) {
        HeardTone plain = Heard.tone(3 * number, 2, hz, db);
        return new NamedTone(
                number,
                new HeardTone(
                        plain.fromSeconds(),
                        plain.toSeconds(),
                        hz,
                        0.1,
                        plain.levels(),
                        difference,
                        phase == null ? null : new HeardTone.Phase(phase, 0.001, 0, 0.001),
                        leftOut),
                hz,
                null);
    }

    private static NamedTone tone(int number, double hz, double leftOut, double db) {
        return tone(number, hz, Quantity.known(0.3, "dB", 0.1), 0.01, leftOut, db, db - 0.3);
    }

    private static final NamedTone FIRST = tone(1, 1000, 0, -20);
    private static final NamedTone SECOND = tone(2, 8000, 0, -20);

    private static String notes(int channels, TapeQuestion question, NamedTone... tones) {
        MemoryAudio sound = new MemoryAudio("tape.wav", 8000, new double[channels][8000]);
        List<NamedTone> all = List.of(tones);
        Naming naming =
                new Naming(
                        all,
                        new TapeSeries("octave", "octaves", 2, 1.0, false, List.of()),
                        List.of());
        PairDelay pair = PairDelay.of(all.stream().map(NamedTone::heard).toList());
        return new TapeNotes(sound, question, naming, pair)
                .all().stream()
                        .map(
                                n ->
                                        BEGINS.entrySet().stream()
                                                .filter(e -> n.startsWith(e.getValue()))
                                                .findFirst()
                                                .orElseThrow(() -> new AssertionError(n))
                                                .getKey())
                        .collect(Collectors.joining(", "));
    }

    @Test
    void aPlainTapeNeedsNoWords() {
        assertEquals("", notes(2, PLAIN, FIRST, SECOND));
    }

    @Test
    void oneToneIsSaidToBeOne() {
        assertEquals("one tone", notes(2, PLAIN, FIRST));
    }

    /** More than a fifth of a second left out is told, with the tone's number. */
    @ParameterizedTest
    @CsvSource({"0.2, ''", "0.21, jumps 2"})
    void dropoutsAreTold(double leftOut, String notes) {
        assertEquals(notes, notes(2, PLAIN, FIRST, tone(2, 8000, leftOut, -20)));
    }

    /** From a tenth of a decibel under full scale up. */
    @ParameterizedTest
    @CsvSource({"-0.1, ''", "-0.09, clipped 1"})
    void tonesAtFullScaleAreTold(double db, String notes) {
        assertEquals(notes, notes(2, PLAIN, tone(1, 1000, 0, db), SECOND));
    }

    @Test
    void oneChannelIsSaidToBeOne() {
        NamedTone left = tone(1, 1000, Heard.DROWNED, null, 0, -20);
        NamedTone other = tone(2, 8000, Heard.DROWNED, null, 0, -20);
        assertEquals("mono", notes(1, PLAIN, left, other));
    }

    /** Exactly the same, on all tones, in level and phase. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, same",
        "1e-8, 0, ''",
        "-1e-8, 0, ''",
        "0, 1e-8, ''",
        "0, -1e-8, ''",
        "1e-10, 1e-10, same"
    })
    void aMonoRecordingIsKnownAgain(double db, double phase, String notes) {
        Quantity none = Quantity.known(0.0, "dB", 0.01);
        NamedTone one = tone(1, 1000, none, 0.0, 0, -20, -20);
        NamedTone other = tone(2, 8000, Quantity.known(db, "dB", 0.01), phase, 0, -20, -20);
        assertEquals(notes, notes(2, PLAIN, one, other));
    }

    @Test
    void oppositePolarityIsTold() {
        // 400 Hz turned over is no delay of less than half a millisecond
        NamedTone one = tone(1, 1000, FIRST.heard().difference(), Math.PI, 0, -20, -20);
        NamedTone other = tone(2, 400, FIRST.heard().difference(), -Math.PI, 0, -20, -20);
        assertEquals("inverted", notes(2, PLAIN, one, other));
    }

    @Test
    void anEmptyChannelIsTold() {
        double none = Double.NaN;
        assertEquals(
                "no right",
                notes(
                        2,
                        PLAIN,
                        tone(1, 1000, Heard.DROWNED, null, 0, -20, none),
                        tone(2, 8000, Heard.DROWNED, null, 0, -20, none)));
        assertEquals(
                "no left",
                notes(
                        2,
                        PLAIN,
                        tone(1, 1000, Heard.DROWNED, null, 0, none, -20),
                        tone(2, 8000, Heard.DROWNED, null, 0, none, -20)));
        assertEquals(
                "",
                notes(
                        2,
                        PLAIN,
                        tone(1, 1000, Heard.DROWNED, null, 0, none, -20),
                        tone(2, 8000, Heard.DROWNED, null, 0, -20, none)));
    }

    private static TapeQuestion withList(Double speedToneHz, Double accuracy) {
        ToneList list =
                new ToneList(
                        ToneList.FORMAT,
                        1,
                        null,
                        null,
                        null,
                        null,
                        accuracy,
                        List.of(Heard.listed(1000, null, null)));
        return new TapeQuestion(list, speedToneHz, null, null, null, null);
    }

    /** Where the speed is that of a tone named for it, its own accuracy counts. */
    @Test
    void theAccuracyOfTheTapeIsAskedFor() {
        TapeQuestion said = new TapeQuestion(null, 1000.0, null, null, null, null);
        NamedTone marked =
                new NamedTone(
                        2,
                        SECOND.heard(),
                        8000.0,
                        Heard.listed(8000, null, ListedTone.Purpose.SPEED));
        assertEquals("accuracy", notes(2, said, FIRST, SECOND));
        assertEquals("accuracy", notes(2, withList(1000.0, null), FIRST, SECOND));
        assertEquals("", notes(2, withList(1000.0, 0.1), FIRST, SECOND));
        assertEquals("", notes(2, withList(null, null), FIRST, SECOND));
        assertEquals("accuracy", notes(2, withList(null, null), FIRST, marked));
    }

    private static String onResponse(String tape, String machine, double... hz) {
        TapeQuestion question =
                new TapeQuestion(
                        null,
                        null,
                        tape == null ? null : TimeConstants.parse(tape),
                        machine == null ? null : TimeConstants.parse(machine),
                        null,
                        null);
        List<NamedTone> tones = Heard.named(hz);
        ResponseTones response = ResponseTones.of(tones, ReferenceTone.of(tones));
        List<String> notes = TapeNotes.onResponse(response, question);
        assertEquals(response.note(), notes.get(0));
        return notes.stream()
                .skip(1)
                .map(n -> Arrays.stream(n.split("[:(]")).findFirst().orElseThrow().strip())
                .collect(Collectors.joining(" | "));
    }

    /** Below 500 Hz a full-track tape reads high. */
    @Test
    void theResponseIsExplained() {
        String fringing =
                "A tape recorded over its full width reads too high in the bass on heads"
                        + " with narrower tracks";
        assertEquals("", onResponse(null, null, 1000));
        assertEquals(
                "What the tape was recorded to was not stated",
                onResponse(null, null, 500, 1000, 8000));
        assertEquals(
                "What the tape was recorded to was not stated | " + fringing,
                onResponse(null, "none,70", 499, 1000, 8000));
        assertEquals(
                "The response holds for a machine set to the tape's time constants, 70 µs.",
                onResponse("none,70", null, 500, 1000, 8000));
        assertEquals(
                "The response holds for a machine set to the tape's time constants, 70 µs.",
                onResponse("none,70", "none,70", 500, 1000, 8000));
        assertEquals(
                "The tape was recorded to 3180 and 50 µs and the machine is set to 70 µs",
                onResponse("3180,50", "none,70", 500, 1000, 8000));
    }
}
