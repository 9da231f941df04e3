package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The mode from what was said and what the recording shows. Thresholds are common practice. */
class ModeFindingTest {

    private static ModeSigns signs(double ppm, double delayMs, boolean steady, boolean saturates) {
        return new ModeSigns(
                Quantity.known(ppm, "ppm", 10), delayMs / 1000, steady, saturates, false);
    }

    private static List<String> codes(ModeFinding finding) {
        return finding.notes().stream().map(n -> n.severity() + " " + n.code()).toList();
    }

    @ParameterizedTest
    @CsvSource({
        // no machine repeats its speed so badly
        "8000, 900, false, true, REFERENCE_TAPE",
        "-5000, 5, true, false, REFERENCE_TAPE",
        // nothing wavers and nothing saturates, at the delay of an interface
        "35, 5, true, false, LOOPBACK",
    })
    void whatTheRecordingShowsIsTakenAndSaid(
            double ppm, double delayMs, boolean steady, boolean saturates, CaptureMode mode) {
        ModeFinding finding =
                ModeFinding.of(signs(ppm, delayMs, steady, saturates), Capture.unsaid());
        assertEquals(mode, finding.mode());
        assertEquals(List.of("note mode-inferred"), codes(finding));
        assertTrue(finding.notes().get(0).message().contains(mode.key()));
    }

    @ParameterizedTest
    @CsvSource({
        "20, 160, false, true, off-tape two-pass reference-tape",
        "20, 3, false, true, two-pass reference-tape",
        "900, 160, false, true, two-pass reference-tape",
        "0, 700, true, true, two-pass reference-tape loopback",
    })
    void whatItDoesNotShowIsAsked(
            double ppm, double delayMs, boolean steady, boolean saturates, String possible) {
        List<String> asked = new ArrayList<>();
        ModeQuestion question =
                (modes, why) -> {
                    modes.forEach(m -> asked.add(m.key()));
                    return Optional.of(CaptureMode.TWO_PASS);
                };
        ModeSigns signs = signs(ppm, delayMs, steady, saturates);
        ModeFinding answered = ModeFinding.of(signs, new Capture(null, question, null));
        assertEquals(possible, String.join(" ", asked));
        assertEquals(CaptureMode.TWO_PASS, answered.mode());
        ModeFinding alone = ModeFinding.of(signs, Capture.unsaid());
        assertNull(alone.mode());
        assertEquals(List.of("warning mode-not-said"), codes(alone));
        asked.forEach(key -> assertTrue(alone.notes().get(0).message().contains("--mode " + key)));
    }

    @ParameterizedTest
    @CsvSource({
        "OFF_TAPE, 5000, 160, false, true",
        "OFF_TAPE, 150, 160, false, false",
        "LOOPBACK, 5000, 5, true, true",
        "LOOPBACK, 10, 5, false, true",
        "LOOPBACK, 10, 5, true, false",
        "TWO_PASS, 20000, 5, false, true",
        "TWO_PASS, 1500, 5, false, false",
        "REFERENCE_TAPE, 60000, 5, false, false",
    })
    void aModeThatCannotBeIsKeptButSaidToBeDoubtful(
            CaptureMode said, double ppm, double delayMs, boolean steady, boolean doubtful) {
        ModeFinding finding = ModeFinding.of(signs(ppm, delayMs, steady, true), Capture.of(said));
        assertEquals(said, finding.mode());
        assertEquals(doubtful ? List.of("warning mode-contradicted") : List.of(), codes(finding));
    }

    @Test
    void uncertainRatesAreGivenTheBenefitOfDoubt() {
        Quantity vague = Quantity.known(400, "ppm", 300);
        ModeSigns signs = new ModeSigns(vague, 0.16, false, true, false);
        assertEquals(List.of(), codes(ModeFinding.of(signs, Capture.of(CaptureMode.OFF_TAPE))));
    }

    @Test
    void theCombOfTwoHeadsTellsOffTape() {
        ModeSigns signs = new ModeSigns(Quantity.known(30, "ppm", 10), 0.16, false, true, true);
        ModeFinding finding = ModeFinding.of(signs, Capture.unsaid());
        assertEquals(CaptureMode.OFF_TAPE, finding.mode());
        assertEquals(List.of("note mode-inferred"), codes(finding));
        assertEquals(
                List.of("warning mode-contradicted"),
                codes(ModeFinding.of(signs, Capture.of(CaptureMode.REFERENCE_TAPE))));
        assertEquals(List.of(), codes(ModeFinding.of(signs, Capture.of(CaptureMode.OFF_TAPE))));
    }

    private static String message(ModeFinding finding) {
        return finding.notes().get(0).message();
    }

    /** Several returns are replays; of one machine unless it runs too far off for that. */
    @ParameterizedTest
    @CsvSource({
        "100, TWO_PASS, taken for replays of one tape",
        "5000, REFERENCE_TAPE, it runs +0.500 % off",
    })
    void severalReturnsAreReplays(double ppm, CaptureMode mode, String words) {
        Capture replays = new Capture(null, ModeQuestion.NOBODY, null, null, 2);
        ModeFinding finding = ModeFinding.of(signs(ppm, 160, false, true), replays);
        assertEquals(mode, finding.mode());
        assertEquals(List.of("note mode-inferred"), codes(finding));
        assertTrue(message(finding).contains(words), message(finding));
        assertTrue(message(finding).contains(mode.key()), message(finding));
    }

    /** What was said counts, however many returns there are. */
    @Test
    void theModeOfReplaysMayBeSaid() {
        Capture said = new Capture(CaptureMode.REFERENCE_TAPE, ModeQuestion.NOBODY, null, null, 2);
        ModeFinding finding = ModeFinding.of(signs(100, 160, false, true), said);
        assertEquals(CaptureMode.REFERENCE_TAPE, finding.mode());
        assertEquals(List.of(), codes(finding));
    }

    @Test
    void itIsSaidWhy() {
        ModeFinding loop = ModeFinding.of(signs(35, 5, true, false), Capture.unsaid());
        assertTrue(message(loop).contains("it begins at 5 ms"), message(loop));
        ModeFinding tape = ModeFinding.of(signs(8000, 900, false, true), Capture.unsaid());
        assertTrue(message(tape).contains("it runs +0.800 % off"), message(tape));
        ModeSigns two = new ModeSigns(Quantity.known(30, "ppm", 10), 0.16, false, true, true);
        ModeFinding heads = ModeFinding.of(two, Capture.unsaid());
        assertTrue(message(heads).contains("and it begins at 160 ms"), message(heads));
        ModeFinding none = ModeFinding.of(signs(20, 160, false, true), Capture.unsaid());
        assertTrue(
                message(none).contains("the return runs +0.002 % off and begins at 160 ms"),
                message(none));
        assertTrue(
                message(none).endsWith("--mode off-tape, --mode two-pass, --mode reference-tape."),
                message(none));
    }

    @ParameterizedTest
    @CsvSource({
        "OFF_TAPE, 5000, 160, false, false, runs +0.500 % off",
        "LOOPBACK, 10, 5, false, false, wavers as on tape",
        "TWO_PASS, 20000, 5, false, false, one machine that recorded and replayed",
        "TWO_PASS, 20, 160, false, true, it begins at 160 ms",
    })
    void aContradictionIsSaidAndWhatToDo(
            CaptureMode said, double ppm, double ms, boolean steady, boolean two, String words) {
        ModeSigns signs =
                new ModeSigns(Quantity.known(ppm, "ppm", 10), ms / 1000, steady, true, two);
        String message = message(ModeFinding.of(signs, Capture.of(said)));
        assertTrue(message.contains(words), message);
        assertTrue(message.endsWith(" Check what was said with --mode."), message);
    }

    /** Whoever is asked is told what the recording shows. */
    @Test
    void theQuestionSaysWhatTheRecordingShows() {
        List<String> told = new ArrayList<>();
        ModeQuestion question =
                (modes, why) -> {
                    told.add(why);
                    return Optional.empty();
                };
        ModeFinding.of(signs(20, 160, false, true), new Capture(null, question, null));
        assertEquals(List.of("The return runs +0.002 % off and begins at 160 ms."), told);
        assertEquals(Optional.empty(), ModeQuestion.NOBODY.ask(List.of(), ""));
    }

    /** Steady, undistorted and at a loop's delay: it takes all three to know a loopback. */
    @ParameterizedTest
    @CsvSource({
        "300, 6, true, false, two-pass reference-tape",
        "35, 6, false, false, off-tape two-pass reference-tape",
        "35, 6, true, true, two-pass reference-tape loopback",
        "35, 400, true, false, two-pass reference-tape loopback",
    })
    void oneSignLessIsNoLoopback(
            double ppm, double delayMs, boolean steady, boolean saturates, String possible) {
        List<String> asked = new ArrayList<>();
        ModeQuestion question =
                (modes, why) -> {
                    modes.forEach(m -> asked.add(m.key()));
                    return Optional.empty();
                };
        ModeSigns signs = signs(ppm, delayMs, steady, saturates);
        ModeFinding.of(signs, new Capture(null, question, null));
        assertEquals(possible, String.join(" ", asked));
    }
}
