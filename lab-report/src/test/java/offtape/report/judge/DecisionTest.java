package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is decided in which situation, and what is said of it. */
class DecisionTest {

    private static Verdict verdict(Situation situation) {
        return Decision.of(situation, List.of());
    }

    private static String all(Verdict verdict) {
        return verdict.reason() + verdict.because() + verdict.next() + verdict.cautions();
    }

    /** Limits, likely faults, chance that there is none, key figures that lack, decision, words. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                // nothing to go by
                "two-pass|''|''|-|''|-|Known faults could not be looked for",
                "two-pass|''|''|0.97|''|-|Whether it is good enough, limits decide.",
                "two-pass|''|''|0.97|response|-|Record the return at 48 kHz",
                // faults alone
                "two-pass|''|dirty-head/left=0.9|0.05|''|service|Look at the dirty-head.",
                "two-pass|''|dirty-head/left=0.6|0.3|''|service|likely, 60\u00a0%",
                "two-pass|''|dirty-head/left=0.6|0.3|response|-|is not sure enough alone",
                "two-pass|''|dirty-head/left=0.85|0.1|wow-and-flutter|service|Not known: Wow",
                // at the border of what is likely, and of what is ground enough alone
                "two-pass|''|dirty-head/left=0.5|0.3|''|service|likely, 50\u00a0%",
                "two-pass|''|dirty-head/left=0.49|0.3|''|-|No single fault is likely",
                "two-pass|''|dirty-head/left=0.8|0.1|wow-and-flutter|service|very likely, 80\u00a0%",
                "two-pass|''|dirty-head/left=0.79|0.1|wow-and-flutter|-|is not sure enough alone",
                "two-pass|balance=pass|''|0.8|''|keep|No known fault stands out (80\u00a0%).",
                "two-pass|balance=pass|''|0.79|''|keep|no more than 79\u00a0% likely",
                "two-pass|balance=pass|''|0.1|''|keep|no more than 10\u00a0% likely",
                "two-pass|balance=pass|''|0.09|''|keep|Something is not as in sound machines",
                "two-pass|balance=pass|''|0.97|''|keep|The limit is met beyond doubt.",
                "two-pass|balance=marginal crosstalk/left=pass|''|0.97|''|keep|1 of 2 limits are met",
                // a likely fault that is not the cause blames no machine
                "two-pass|noise-distance/left=fail|ground-loop=0.9 azimuth=0.6|0.1|response|-|What"
                        + " fails likely has its cause outside",
                "two-pass|noise-distance/left=fail|ground-loop=0.9 hiss/left=0.6|0.1|response|service|"
                        + "Mend the hiss.",
                "two-pass|''|worn-head=0.45|0.5|''|-|no more than 50\u00a0%",
                "two-pass|''|ground-loop=0.9|0.05|''|-|That lies outside the machine.",
                // limits that are met
                "two-pass|response/left=pass balance=pass|''|0.97|''|keep|All 2 limits are met",
                "two-pass|response/left=pass|''|-|''|keep|could not be looked for",
                "two-pass|balance=marginal response/left=pass|''|0.97|''|keep|Too close to call: how"
                        + " equally loud both channels come back (Balance, right re left: 0.12 dB",
                "two-pass|balance=pass|''|0.6|''|keep|No single fault is likely",
                "two-pass|balance=pass|dirty-head/left=0.6|0.3|''|service|Look at the dirty-head.",
                "two-pass|balance=pass|ground-loop=0.9|0.1|''|keep|Look at the ground-loop.",
                "reference-tape|balance=pass|''|0.97|''|keep|how it records is not judged",
                // limits that are failed
                "two-pass|wow-and-flutter=fail|''|0.9|''|service|No known fault explains what fails",
                "two-pass|wow-and-flutter=fail|pinch-roller=0.7|0.1|''|service|It would explain what"
                        + " fails: Wow and flutter, weighted peak.",
                "two-pass|balance=fail|dirty-head=0.9|0.1|''|service|No known fault explains what fails",
                "two-pass|balance=fail|dirty-head/left=0.9|0.1|''|service|explain what fails: Balance",
                "two-pass|wow-and-flutter=fail response/left=unknown|''|-|response|service|Not known:"
                        + " Frequency response, left. It was not heard.",
                "two-pass|noise-distance/left=fail|ground-loop=0.9|0.1|''|-|What fails likely has its"
                        + " cause outside",
                "two-pass|noise-distance/left=fail|ground-loop=0.9 hiss/left=0.6|0.1|''|service|Mend"
                        + " the hiss.",
                "reference-tape|level-at-3-percent/left=fail|''|0.9|''|-|may be the fault of the tape",
                "reference-tape|level-at-3-percent/left=fail balance=fail|''|0.9|''|service|Not good"
                        + " enough: how equally loud",
                "two-pass|level-at-3-percent/left=fail|''|0.9|''|service|have a technician",
                "two-pass|level-at-3-percent/left=fail|''|0.9|''|service|with another tape",
                // figures that are not known
                "two-pass|balance=pass response/left=unknown|''|0.97|''|-|too much is not known",
                "two-pass|balance=pass response/left=unknown|dirty-head/left=0.6|0.2|''|-|Look at the"
                        + " dirty-head.",
                "two-pass|balance=pass response/left=unknown|worn-head/left=0.9|0.1|''|service|Mend"
                        + " the worn-head.",
                "off-tape|balance=pass speed-deviation=unknown|''|0.97|''|-|--mode reference-tape",
                "-|balance=pass|''|0.97|speed-deviation|-|Say with --mode",
                "two-pass|balance=pass|''|0.97|weighted-noise-distance|-|with its rising tones",
                "two-pass|wow-and-flutter=unknown|''|-|''|-|without a break"
            })
    void isDecided(
            String mode,
            String checks,
            String suspects,
            Double sound,
            String missing,
            String decision,
            String words) {
        Verdict verdict = verdict(Cases.situation(mode, checks, suspects, sound, missing));
        assertEquals(decision, verdict.decision(), all(verdict));
        String said = all(verdict).toLowerCase(Locale.ROOT);
        assertTrue(said.contains(words.toLowerCase(Locale.ROOT)), all(verdict));
        assertFalse(verdict.next().isEmpty(), "something can always be done");
        if (decision == null) {
            assertNotNull(verdict.reason());
        } else {
            assertNull(verdict.reason());
            assertFalse(verdict.because().isEmpty());
        }
    }

    @Test
    void aRecordingThatCannotBeReliedOnDecidesNothing() {
        Situation sure = Cases.situation("two-pass", "balance=fail", "worn-head=0.99", 0.01, "");
        Situation lost =
                new Situation(
                        sure.mode(),
                        sure.limits(),
                        sure.checks(),
                        sure.suspects(),
                        sure.soundLikelihood(),
                        List.of(),
                        List.of("The programme is for another tape speed."),
                        null);
        Verdict verdict = verdict(lost);
        assertNull(verdict.decision());
        assertTrue(verdict.reason().contains("for another tape speed"), verdict.reason());
        assertEquals(
                List.of("Mend that, record the programme again, and measure it."), verdict.next());
    }

    @Test
    void cheapRepairsComeFirstAndThenThoseThatMendMost() {
        Verdict verdict =
                verdict(
                        Cases.situation(
                                "two-pass",
                                "response/left=fail response/right=fail wow-and-flutter=fail",
                                "pinch-roller=0.95 worn-head/left=0.9 worn-head/right=0.6"
                                        + " azimuth=0.7 dirty-head/left=0.6 ground-loop=0.5",
                                0.01,
                                ""));
        List<String> names =
                verdict.next().stream().map(s -> s.replaceAll("[:(–].*", "").strip()).toList();
        assertEquals(
                List.of(
                        "The ground-loop",
                        "The dirty-head",
                        "The azimuth",
                        "The worn-head",
                        "The pinch-roller",
                        "Measure again in the same way, and set both sessions side by side"),
                names);
        assertTrue(verdict.next().get(3).startsWith("The worn-head (left and right) – "));
        assertEquals(2, verdict.cautions().size(), "each caution once");
    }

    /** A fault of the left channel is not why the right one fails. */
    @Test
    void aFaultExplainsItsOwnChannelAndItsOwnFiguresOnly() {
        Situation s =
                Cases.situation(
                        "two-pass",
                        "response/left=fail response/right=fail wow-and-flutter=fail balance=fail",
                        "dirty-head/left=0.9",
                        0.1,
                        "");
        assertEquals(
                List.of("Frequency response, right", "Wow and flutter, weighted peak"),
                s.unexplained().stream().map(Verdict.Check::quantity).toList());
    }

    @Test
    void aKeyFigureThatALimitMissesAsWellIsNamedOnce() {
        Situation s =
                Cases.situation("two-pass", "response/left=unknown", "", null, "response response");
        assertEquals(1, s.gaps().size());
    }
}
