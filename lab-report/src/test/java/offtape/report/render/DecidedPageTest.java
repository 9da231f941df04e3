package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import offtape.report.fault.FaultFinding;
import offtape.report.judge.Decider;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;

/** The verdict at the head of the page: in words, in order, and each thing once. */
class DecidedPageTest {

    private static final LimitSet LIMITS = LimitSet.of("din45500-4");

    private static final FaultFinding NONE = new FaultFinding(List.of(), null);

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    /** What a decided session with faults looks like. */
    static Results served() {
        Results judged = Decider.decided(Scenario.before(), LIMITS, null, NONE);
        return judged.withVerdict(
                new Verdict(
                        "service",
                        null,
                        List.of(
                                "Not good enough: how evenly low, middle and high tones come back"
                                        + " (Frequency response, right: 8.2 dB; the limit: 40 Hz to"
                                        + " 12500 Hz within a width of 7 dB).",
                                "Dirty head (right): very likely, 87 %. The highs fall in a straight"
                                        + " line, by 1.9 dB for each kilohertz.",
                                "The limits of \"DIN 45500 part 4\": as quoted."),
                        judged.verdict().checks(),
                        List.of(
                                new Verdict.Fault(
                                        "dirty-head",
                                        "Dirty head, or tape that does not lie against it",
                                        "right",
                                        0.87,
                                        List.of(
                                                "The highs of the right channel fall in a straight line"
                                                        + " over frequency, by 1.9 dB for each kilohertz.",
                                                "A space of 1.6 µm explains the curve within 0.08 dB."),
                                        List.of(
                                                "A worn head takes little at 3 kHz; here 5.1 dB are gone"
                                                        + " there."),
                                        "Clean heads, guides and pinch roller, let them dry, and measure"
                                                + " again.",
                                        "Keep fingers, hair and sleeves off what turns."),
                                new Verdict.Fault(
                                        "pinch-roller",
                                        "Hardened pinch roller",
                                        null,
                                        0.42,
                                        List.of("A line of 1.5 Hz stands out by 0.11 %."),
                                        List.of(),
                                        "Look whether its rubber shines or is cracked.",
                                        null)),
                        0.03,
                        List.of(
                                "Dirty head (right): Clean heads, guides and pinch roller, let them dry,"
                                        + " and measure again. Cleaning brings back all of the lost"
                                        + " highs at no cost. It would explain what fails: Frequency"
                                        + " response, right.",
                                "Measure again in the same way, and set both sessions side by side."),
                        List.of(
                                "Keep fingers, hair and sleeves off reels, capstan and roller while"
                                        + " they turn; clean and look only when they stand still.")));
    }

    @Test
    void theVerdictStandsAboveTheFiguresInItsOrder() {
        String page = ReportWriter.html(served());
        int last = 0;
        for (String part :
                List.of(
                        "<h2>Have it serviced.</h2>",
                        "Not good enough: how evenly",
                        "What to do next</h3>",
                        "<ol>",
                        "▲ Beware</h3>",
                        "class=\"findings\"",
                        "class=\"headline\"",
                        "id=\"verdict\"",
                        "Figures against their limits",
                        "Dirty head, or tape that does not lie against it (right)</h3>",
                        "very likely, 87\u00a0%",
                        "What speaks for it:",
                        "How it was told from what looks like it:",
                        "First thing to try:",
                        "Hardened pinch roller</h3>",
                        "possible, 42\u00a0%")) {
            int at = page.indexOf(part, last);
            assertTrue(at > 0, part + " is missing or comes too early");
            last = at;
        }
        for (String once : List.of("Not good enough: how", "It would explain what fails")) {
            assertEquals(1, count(page, once), once);
        }
    }

    @Test
    void aReasonStandsOnThePageOnce() {
        Results open = Decider.decided(Scenario.before(), null, null, NONE);
        String page = ReportWriter.html(open);
        assertEquals(1, count(page, "Not decided yet."));
        assertEquals(1, count(page, open.verdict().reason()), open.verdict().reason());
        assertFalse(page.contains("id=\"verdict\""), "there is no evidence to show");
        Results bare = Scenario.before();
        assertEquals(1, count(ReportWriter.html(bare), bare.verdict().reason()));
    }

    /** The invented session is off tape, which cannot show the mean speed that the norm limits. */
    @Test
    void aSessionIsDecidedFromItsFigures() {
        Results decided = Decider.decided(Scenario.before(), LIMITS, null, NONE);
        assertEquals("service", decided.verdict().decision());
        String page = ReportWriter.html(decided);
        decided.verdict().because().forEach(b -> assertEquals(1, count(page, escaped(b)), b));
        Results empty = Decider.decided(Scenario.empty(null), null, null, NONE);
        assertEquals(null, empty.verdict().decision());
        assertTrue(empty.verdict().next().size() > 3, empty.verdict().next().toString());
    }

    private static String escaped(String text) {
        return new Markup().text(Reader.ENGLISH.unbroken(text)).toString();
    }

    @Test
    void anInterfaceIsNotJudgedLikeAMachine() {
        Results machine = Scenario.before();
        Results loop =
                Scenario.with(
                        machine.session().withMode("loopback"),
                        machine.timing(),
                        machine.speed(),
                        machine.response(),
                        machine.distortion(),
                        machine.noise(),
                        machine.channels(),
                        List.of());
        assertEquals(loop, Decider.decided(loop, null, null));
        Results held = Decider.decided(loop, LIMITS, null);
        assertEquals(null, held.verdict().decision());
        assertFalse(held.verdict().checks().isEmpty());
        assertFalse(ReportWriter.html(held).contains("class=\"decision\""));
    }
}
