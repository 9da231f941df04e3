package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.core.text.Language;
import offtape.core.text.Translation;
import offtape.report.cost.Economics;
import offtape.report.cost.Repair;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What results say of a decision in English can all be said in German. */
class GermanVerdictTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    private static final Pattern ENGLISH =
            Pattern.compile("(?i)\\b(the|of|and|is|with|from|no|not|than|which|be|by|at most)\\b");

    /** What the made-up cases say in words of their own, and where their limits are from. */
    private static final Pattern MADE_UP =
            Pattern.compile(
                    "(Look at|Mend|Measure|All is well without|The figures of) (the )?[a-z-]+( say so)?\\."
                            + "|The [a-z]+-[a-z]+|It was not (heard|played)\\.|made up"
                            + "|DIN 45500 .* figures");

    private static void assertGerman(String english) {
        String german = GERMAN.of(english);
        String own = MADE_UP.matcher(german).replaceAll("…");
        assertFalse(ENGLISH.matcher(own).find(), english + "\n" + german);
    }

    private static Stream<String> sentences(Verdict verdict) {
        List<String> all = new ArrayList<>(verdict.because());
        all.addAll(verdict.next());
        all.addAll(verdict.cautions());
        all.add(verdict.reason());
        all.add(DecisionWords.of(verdict));
        return all.stream().filter(Objects::nonNull);
    }

    private static Economics costs(double value, double rate, boolean repairable, Repair repair) {
        return new Economics(
                Economics.FORMAT,
                Economics.VERSION,
                null,
                "crowns",
                100.5,
                value,
                value > 500 ? 50.0 : null,
                rate,
                null,
                repairable,
                repair == null ? null : List.of(repair),
                null);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "two-pass|''|''|-|''",
                "two-pass|''|dirty-head/left=0.6|0.3|response",
                "two-pass|''|dirty-head/left=0.85|0.1|wow-and-flutter",
                "two-pass|''|worn-head=0.45|0.5|''",
                "two-pass|''|ground-loop=0.97|0.05|''",
                "two-pass|response/left=pass balance=pass|''|0.97|''",
                "two-pass|balance=marginal response/left=pass|''|0.97|''",
                "reference-tape|balance=pass|''|0.97|crosstalk",
                "two-pass|wow-and-flutter=fail balance=fail|''|0.01|speed-deviation",
                "two-pass|response/left=fail response/right=fail|worn-head/left=0.9 worn-head/right=0.6|0.1|''",
                "two-pass|wow-and-flutter=fail|pinch-roller=0.7|0.1|weighted-noise-distance",
                "reference-tape|level-at-3-percent/left=fail|''|0.9|''",
                "two-pass|level-at-3-percent/left=fail noise-distance/right=fail|''|0.9|''",
                "reference-tape|balance=pass|''|0.97|speed-deviation",
                "-|interchannel-delay=fail speed-deviation=fail|''|0.97|speed-deviation",
                "off-tape|balance=pass speed-deviation=unknown|''|0.97|''"
            })
    void everySentenceOfAVerdictIsTranslated(
            String mode, String checks, String suspects, Double sound, String missing) {
        Verdict verdict =
                Decision.of(Cases.situation(mode, checks, suspects, sound, missing), List.of());
        sentences(verdict).forEach(GermanVerdictTest::assertGerman);
    }

    @Test
    void whatMendingCostsIsTranslated() {
        Repair heads = new Repair("worn-head", 100.0, 200.5, 2.0, 4.0, true);
        Repair lost = new Repair("worn-head", 100.0, 100.0, 2.0, 2.0, false);
        for (Economics costs :
                List.of(
                        costs(600, 50, true, heads),
                        costs(450, 50, true, heads),
                        costs(350, 50, true, heads),
                        costs(250, 50, true, null),
                        costs(250, 50, true, lost),
                        costs(600, 50, false, null))) {
            for (String suspects : List.of("worn-head/left=0.9", "worn-head=0.3")) {
                String checks = "response/left=fail wow-and-flutter=fail";
                Situation s = Cases.situation("two-pass", checks, suspects, 0.1, "", costs);
                sentences(Decision.of(s, List.of())).forEach(GermanVerdictTest::assertGerman);
            }
        }
    }

    @Test
    void whatIsFilledInIsTranslatedInItsPlace() {
        assertEquals(
                "Nicht gut genug: wie wenig von einem Kanal auf dem anderen zu hören ist"
                        + " (Übersprechen bei 1 kHz, links: −30,1 dB; Übersprechen bei 1 kHz,"
                        + " rechts: −31,2 dB; der Grenzwert: höchstens −45,5 dB).",
                GERMAN.of(
                        "Not good enough: how little of one channel is heard on the other"
                                + " (Crosstalk at 1 kHz, left: −30.1 dB; Crosstalk at 1 kHz,"
                                + " right: −31.2 dB; the limit: at most −45.5 dB)."));
        assertEquals(
                "40 Hz bis 12500 Hz: −2,5 bis 2 dB re 1 kHz",
                GERMAN.of("40 Hz to 12500 Hz −2.5 to 2 dB re 1 kHz"));
        assertEquals(
                "Die Instandsetzung kostet 200 bis 400,5 EUR (2 bis 4 Stunden Arbeit)."
                        + " Mit den 100 EUR für die Maschine sind das mindestens 300,5 EUR; eine"
                        + " gute ist 600 EUR wert.",
                GERMAN.of(
                        "Getting it right costs 200 to 400.5 EUR (2 to 4 hours of work). With the"
                                + " 100 EUR for the machine that is at least 300.5 EUR; a good one"
                                + " is worth 600 EUR."));
        String known = GERMAN.of("Not known: response (left and right); mean speed.");
        assertEquals(
                "Nicht bekannt: Frequenzgang (links und rechts); mittlere Geschwindigkeit.", known);
        assertTrue(GERMAN.of("Deck – very likely, 87 %.").startsWith("Deck – sehr wahrscheinlich"));
    }
}
