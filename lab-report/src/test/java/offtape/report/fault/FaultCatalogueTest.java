package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.core.transport.CaptureMode;
import offtape.reference.FaultFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is known of faults is whole and agrees with itself. */
class FaultCatalogueTest {

    private static final String NO_SOURCE = "common practice, no source";

    private static final Set<String> MODES =
            Set.of(
                    CaptureMode.REFERENCE_TAPE.key(),
                    CaptureMode.TWO_PASS.key(),
                    CaptureMode.OFF_TAPE.key());

    private static final Pattern INSIDE =
            Pattern.compile(
                    "inside the machine|solder|capacitor|trimmer|shaft|pulley|brakes",
                    Pattern.CASE_INSENSITIVE);

    private static final Pattern TURNS =
            Pattern.compile(
                    "\\b(heads|guides?|roller|capstan|reels?|brakes|azimuth screw)\\b",
                    Pattern.CASE_INSENSITIVE);

    private static final Pattern TONES =
            Pattern.compile("line-up|calibration tape|command erasure", Pattern.CASE_INSENSITIVE);

    static List<FaultNote> notes() {
        return FaultCatalogue.all();
    }

    /** What somebody does at the machine. */
    private static String work(FaultNote note) {
        return note.first() + " " + note.repair();
    }

    @Test
    void everyCodeHasItsNoteAndEveryNameIsItsOwn() {
        assertEquals(FaultFiles.codes(), notes().stream().map(FaultNote::code).toList());
        assertEquals(notes().size(), notes().stream().map(FaultNote::name).distinct().count());
    }

    @ParameterizedTest
    @MethodSource("notes")
    void nothingIsEmptyAndSentencesEnd(FaultNote note) {
        Stream.of(note.signature(), note.first(), note.repair(), note.gain(), note.confirm())
                .forEach(s -> assertTrue(s.endsWith(".") && !s.contains("  "), s));
        note.unlike().forEach(u -> assertTrue(u.words().endsWith("."), u.words()));
        assertTrue(note.source().equals(NO_SOURCE) || note.source().endsWith("."), note.source());
        assertFalse(note.name().isBlank() || note.name().endsWith("."));
        assertFalse(note.cautions().isEmpty(), "every fault is looked for on a machine");
    }

    @ParameterizedTest
    @MethodSource("notes")
    void keysAreKnown(FaultNote note) {
        assertTrue(Set.of("one-or-both", "machine").contains(note.channels()));
        assertTrue(Set.of("clean", "adjust", "replace", "outside").contains(note.effort()));
        assertFalse(note.modes().isEmpty());
        assertTrue(MODES.containsAll(note.modes()), note.modes().toString());
        note.cautions().forEach(Caution::of);
        assertEquals(note.cautions().size(), Set.copyOf(note.cautions()).size());
    }

    @ParameterizedTest
    @MethodSource("notes")
    void whatLooksLikeItNamesItInTurn(FaultNote note) {
        List<String> alike = note.unlike().stream().map(FaultNote.LookAlike::code).toList();
        assertTrue(alike.size() >= 1 && alike.size() <= 4, alike.toString());
        assertEquals(alike.size(), Set.copyOf(alike).size());
        assertFalse(alike.contains(note.code()));
        for (String other : alike) {
            assertTrue(
                    FaultCatalogue.of(other).unlike().stream()
                            .anyMatch(u -> u.code().equals(note.code())),
                    other + " does not name " + note.code());
        }
    }

    /** Record head, bias, erasure and record amplifier have no part in a tape made elsewhere. */
    @Test
    void faultsOfRecordingDoNotShowWithATapeMadeElsewhere() {
        for (String code :
                List.of(
                        "record-azimuth",
                        "bias-low",
                        "bias-high",
                        "record-electronics",
                        "erasure")) {
            assertEquals(List.of("two-pass", "off-tape"), FaultCatalogue.of(code).modes());
        }
    }

    /** What one machine writes and reads alike cancels: mean speed, and a tilt of one head. */
    @Test
    void whatCancelsShowsOnlyWithATapeMadeElsewhere() {
        for (String code : List.of("azimuth", "wrong-mains", "speed-setting")) {
            assertEquals(List.of("reference-tape"), FaultCatalogue.of(code).modes());
        }
    }

    @ParameterizedTest
    @MethodSource("notes")
    void whatCanHurtCarriesItsCaution(FaultNote note) {
        cautioned(note, INSIDE, Caution.MAINS);
        cautioned(note, TURNS, Caution.MOVING_TAPE);
        cautioned(
                note,
                Pattern.compile("demagnetis", Pattern.CASE_INSENSITIVE),
                Caution.DEMAGNETISER);
        cautioned(note, TONES, Caution.TEST_TONE);
    }

    private static void cautioned(FaultNote note, Pattern words, Caution caution) {
        if (words.matcher(work(note)).find()) {
            assertTrue(note.cautions().contains(caution.key()), note.code() + ": " + caution);
        }
    }
}
