package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.core.text.Language;
import offtape.core.text.Translation;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;
import org.junit.jupiter.api.Test;

/** What is said in English of causes, beside what the catalogue says, can be said in German. */
class GermanCausesTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    private static final Pattern ENGLISH =
            Pattern.compile("(?i)\\b(the|of|and|is|with|from|no|not|than|which|be|by|to)\\b");

    private static void assertGerman(String english) {
        String german = GERMAN.of(english);
        assertFalse(ENGLISH.matcher(german).find(), english + "\n" + german);
    }

    private static Evidence.Shown shown(Symptom symptom) {
        return new Evidence.Shown(symptom, 0.25, 0.3, 1.5);
    }

    @Test
    void everySymptomIsTranslated() {
        Symptoms.all().stream()
                .map(GermanCausesTest::shown)
                .flatMap(
                        s ->
                                Stream.of(
                                        SymptomWords.beside(s),
                                        SymptomWords.against(s, 0.1),
                                        SymptomWords.against(
                                                new Evidence.Shown(s.symptom(), 0, 1, 0), 1)))
                .forEach(GermanCausesTest::assertGerman);
    }

    @Test
    void factsOfAFaultAndCautionsAreTranslated() {
        for (FaultNote note : FaultCatalogue.all()) {
            Stream.of(
                            FaultWords.channels(note),
                            FaultWords.modes(note),
                            FaultWords.moves(note),
                            FaultWords.effort(note))
                    .forEach(GermanCausesTest::assertGerman);
            FaultPage.of(note).sections().forEach(s -> assertGerman(s.heading()));
            for (SignatureRow row : LearnedRows.of(note.code())) {
                assertGerman(row.figure());
                assertGerman(row.change());
                assertFalse(GERMAN.of(row.figure()).contains("channel"), row.figure());
            }
        }
        Stream.of(Caution.values()).map(Caution::words).forEach(GermanCausesTest::assertGerman);
        DoubleStream.of(0.97, 0.85, 0.6, 0.3, 0.1)
                .mapToObj(Likelihood::words)
                .forEach(likely -> assertFalse(GERMAN.of(likely).contains("likely"), likely));
    }

    @Test
    void numbersAndListsAreWrittenAsGermanDoes() {
        assertEquals(
                "Drift der Geschwindigkeit: 1,2 %; intakte Maschinen zeigen bis zu 0,5 %.",
                GERMAN.of("Drift of the speed: 1.2 %; sound machines show up to 0.5 %."));
        assertEquals(
                "Aussetzer: 2,5 je Minute; intakte Maschinen zeigen 0,3 bis 0,5 je Minute.",
                GERMAN.of("Dropouts: 2.5 a minute; sound machines show 0.3 to 0.5 a minute."));
        assertEquals(
                List.of(
                        "Er verschlechtert: Geschwindigkeitsabweichung und Gleichlaufschwankungen."),
                List.of(GERMAN.of("It worsens the speed deviation and wow and flutter.")));
    }
}
