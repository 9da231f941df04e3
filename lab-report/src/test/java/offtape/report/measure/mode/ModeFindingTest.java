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
}
