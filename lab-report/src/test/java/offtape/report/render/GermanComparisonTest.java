package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Language;
import offtape.report.compare.Comparison;
import offtape.report.compare.History;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;

/** Speed, two sessions side by side and many in their order, told in German. */
class GermanComparisonTest {

    private static final Wording GERMAN = Reader.GERMAN;

    /** Words that no German sentence has. */
    private static final Pattern ENGLISH =
            Pattern.compile("(?i)\\b(the|of|and|is|with|from|no|not|than|which)\\b");

    private static final String TAPE = "a roll of long-play tape";

    private static final Results WORN = Pairs.worn("Anna");

    /** What is to be read in a page without what others say on it: results and the user. */
    private static String read(String page, Stream<String> said) {
        String text =
                page.replaceAll("(?s)<(style|script)[^>]*>.*?</\\1>", " ")
                        .replaceAll("<[^>]*>", " ")
                        .replace("&#39;", "'")
                        .replace('\u00a0', ' ');
        List<String> others = said.map(GERMAN::told).toList();
        for (String other : others) {
            text = text.replace(other, "");
        }
        return text.replace(TAPE, "");
    }

    private static void assertGerman(String text, List<String> parts) {
        Matcher found = ENGLISH.matcher(text);
        assertFalse(
                found.find(),
                () -> text.substring(Math.max(0, found.start() - 60), found.end() + 20));
        parts.forEach(part -> assertTrue(text.contains(part), part));
    }

    @Test
    void theSectionOnSpeedIsGerman() {
        Speed speed = WORN.speed();
        Stream<String> said =
                Stream.of(
                                speed.notes().stream(),
                                speed.transport().notes().stream(),
                                Stream.of(
                                        speed.transport().delayFound(),
                                        speed.transport().deviation().reason()))
                        .flatMap(s -> s);
        Section section =
                new SpeedSection(GERMAN).of(WORN, new LimitLines(Reader.GERMAN, List.of()));
        assertGerman(
                read(section.markup().toString(), said),
                List.of(
                        "Jaulen, Effektivwert, 0,2 bis 6 Hz",
                        "Das Laufwerk selbst",
                        "Abweichung vom Mittel, %",
                        "−0,412 %"));
        Section bare =
                new SpeedSection(GERMAN)
                        .of(Scenario.empty("Anna"), new LimitLines(Reader.GERMAN, List.of()));
        assertGerman(read(bare.markup().toString(), Stream.of()), List.of("kein stetiger Ton"));
    }

    @Test
    void aServiceIsToldInGerman() {
        Results fine = Pairs.fine("Anna");
        Comparison comparison = Comparison.of(WORN, fine, List.of(WORN, fine));
        String page = ReportWriter.html(comparison, WORN, fine, Language.GERMAN);
        assertGerman(
                read(page, Stream.of()),
                List.of(
                        "Anna: vorher und nachher – Offtape-Bericht",
                        "Nachher: Anna, 28. März 2026",
                        "Entscheidung: vorher warten lassen, nachher behalten.",
                        "aus 2 Messungen genommen",
                        "Von den 16 Kenngrößen, die in beiden Sitzungen bekannt sind, hat sich keine",
                        "≈ vielleicht verschwunden",
                        "auf dem linken Kanal von 15,20 kHz auf 16,70 kHz",
                        "Links vorher"));
    }

    @Test
    void twoMachinesAreToldInGerman() {
        Results other = Pairs.fine("Berta");
        Comparison comparison = Comparison.of(WORN, other, List.of());
        String page = ReportWriter.html(comparison, WORN, other, Language.GERMAN);
        assertGerman(
                read(page, Stream.of()),
                List.of(
                        "Zwei Maschinen nebeneinander",
                        "Entscheidung für Anna: warten lassen; für Berta: behalten.",
                        "Besser bei Berta: ",
                        "Fehler, nur Anna: ",
                        "► Berta",
                        "Links, Anna"));
    }

    @Test
    void aHistoryIsToldInGerman() {
        List<Results> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            all.add(
                    session(
                            Instant.parse("2024-05-01T12:00:00Z").plusSeconds(2_592_000L * i),
                            1 - 0.2 * i,
                            190.5));
        }
        Results slow = session(Instant.parse("2024-01-01T00:00:00Z"), 0, 95.25);
        all.add(slow);
        String page = ReportWriter.html(History.of(all, null), Language.GERMAN);
        assertGerman(
                read(page, Stream.of()),
                List.of(
                        "Anna im Lauf der Zeit",
                        "4 Messungen der Reihe nach",
                        "Vom 1. Mai 2024, 12:00 UTC bis zum 30. Juli 2024, 12:00 UTC.",
                        "Wird schlechter: ",
                        "Ausgelassen: die vom 2024-01-01T00:00:00Z. Die Sitzungen haben verschiedene"
                                + " Bandgeschwindigkeiten, 9,53 cm/s und 19,05 cm/s;",
                        "Seit der ersten Sitzung, Tage"));
        List<Results> unlike = List.of(all.get(0), slow);
        String refused =
                assertThrows(UnusableInputException.class, () -> History.of(unlike, null))
                        .getMessage();
        assertTrue(refused.startsWith("A history needs two sessions"), refused);
        assertGerman(GERMAN.told(refused), List.of("Ein Verlauf braucht zwei Sitzungen"));
    }

    private static Results session(Instant madeAt, double repaired, double mmPerS) {
        return Scenario.session(
                new Session(
                        "Anna", TAPE, mmPerS, "off-tape", madeAt.toString(), null, "Offtape", "1"),
                repaired);
    }

    /** What keeps figures from being compared, each as the class that says it says it. */
    @Test
    void reasonsAreToldInGerman() {
        Results known = Pairs.with("two-pass", 0.1, Pairs.fault("speed-setting", null, 0.9));
        Results blind = Pairs.with("reference-tape", 0.1);
        Results later = Pairs.with("two-pass", 0.1, Pairs.fault("later", null, 0.9));
        String mode =
                assertThrows(
                                UnusableInputException.class,
                                () -> Comparison.of(known, blind, List.of()))
                        .getMessage();
        assertEquals(
                "Die Sitzungen haben verschiedene Aufnahmearten, two-pass und reference-tape; kein"
                        + " Wert der einen lässt sich dem der anderen gegenüberstellen. Beide auf"
                        + " gleiche Art messen.",
                GERMAN.told(mode));
        Comparison comparison = Comparison.of(later, known, List.of());
        assertEquals(
                "Diese Version kennt den Fehler nicht.",
                GERMAN.told(
                        comparison.faults().stream()
                                .filter(f -> f.code().equals("later"))
                                .findFirst()
                                .orElseThrow()
                                .reason()));
        assertEquals(
                "Nicht in beiden Sitzungen bekannt.",
                GERMAN.told(comparison.changes().get(0).difference().reason()));
    }
}
