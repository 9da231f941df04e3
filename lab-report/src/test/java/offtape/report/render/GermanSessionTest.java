package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import offtape.report.fault.FaultFinding;
import offtape.report.judge.Decider;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;

/** The report of a session in German: its frame, and the sections on its verdict and methods. */
class GermanSessionTest {

    private static final Wording GERMAN = Reader.GERMAN;

    private static final Pattern ENGLISH =
            Pattern.compile("(?i)\\b(the|of|and|is|with|from|no|not|than|which|by|how)\\b");

    /** What whoever measured says, and reasons that only the tests give. */
    private static final Pattern OWN =
            Pattern.compile(
                    "a roll of long-play tape|This recording cannot tell\\."
                            + "|Needs a loopback session of the interface\\.");

    private static Results results() {
        FaultFinding none = new FaultFinding(List.of(), null);
        Results all = Scenario.before();
        return Decider.decided(all, LimitSet.of("din45500-4"), null, none);
    }

    private static void assertGerman(Markup markup) {
        String text = markup.toString().replaceAll("<[^>]*>", "\n");
        String own = OWN.matcher(text).replaceAll("…");
        assertFalse(ENGLISH.matcher(own).find(), own);
    }

    @Test
    void theFirstScreenIsGerman() {
        Results results = results();
        assertGerman(Opening.of(GERMAN, results));
        assertGerman(HeadlineTable.of(GERMAN, results));
        String figures = HeadlineTable.of(GERMAN, results).toString();
        assertTrue(
                figures.contains("Obere Grenzfrequenz, −3 dB")
                        || figures.contains("Obere Grenzfrequenz, −3 dB"));
        assertFalse(figures.contains("Upper edge"));
    }

    @Test
    void whatSpoilsTheFiguresIsHeadedInGerman() {
        String warnings = Opening.warnings(GERMAN, results()).toString();
        assertTrue(warnings.contains(">Vor dem Lesen der Zahlen<"), warnings);
        assertTrue(warnings.contains(">▲ Warnung:<"), warnings);
    }

    @Test
    void theVerdictAndTheMethodAreGerman() {
        Results results = results();
        assertGerman(VerdictSection.of(GERMAN, results).markup());
        assertGerman(MethodSection.of(GERMAN, results).markup());
        assertGerman(GlossarySection.of(GERMAN).markup());
        for (String mode : List.of("reference-tape", "two-pass", "off-tape", "loopback", "?")) {
            ModeWords.of(GERMAN, mode).forEach(t -> assertGerman(new Markup().text(t)));
        }
    }
}
