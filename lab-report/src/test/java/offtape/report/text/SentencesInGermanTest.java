package offtape.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Language;
import offtape.core.text.Texts;
import offtape.core.text.Translation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What results of this module say in English is known again and said in German. */
class SentencesInGermanTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    private static final Pattern PLACE =
            Pattern.compile("%(?:[0-9]+\\$)?[-#+0,(]*[0-9]*(?:\\.[0-9]+)?([sdfeg%])");

    /** Words that are none in German; {@code was} is one. */
    /** In no sentence and no list of words, and all unlike, so that each shows its place. */
    private static final List<String> UNKNOWN_WORDS =
            List.of("Quorx", "Vlimp", "Zadru", "Wexil", "Joppf", "Yttwo", "Brasq", "Ulkun");

    private static final Pattern ENGLISH =
            Pattern.compile("(?<!-)\\b(the|of|and|is|with|from|no|not|than|which)\\b");

    static List<String> bundles() throws IOException {
        try (InputStream in =
                SentencesInGermanTest.class.getResourceAsStream(
                        "/META-INF/offtape/sentences-report")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank())
                    .toList();
        }
    }

    /** Something fitting for each place; no two hold the same. */
    private static Object[] contents(String english) {
        List<Object> all = new ArrayList<>();
        Matcher place = PLACE.matcher(english);
        while (place.find()) {
            int n = all.size() + 2;
            switch (place.group(1)) {
                case "s" -> all.add(UNKNOWN_WORDS.get(all.size()));
                case "d" -> all.add(n);
                case "%" -> {}
                default -> all.add(n + 0.25);
            }
        }
        return all.toArray();
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void eachIsKnownByItsPattern(String bundle) {
        Texts english = Texts.at(bundle, Locale.ENGLISH);
        Texts german = Texts.at(bundle, Locale.GERMAN);
        for (String key : english.keys()) {
            String pattern = english.pattern(key);
            assertEquals(
                    german.say(key, contents(pattern)),
                    GERMAN.of(english.say(key, contents(pattern))),
                    key);
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void noneIsLeftInEnglish(String bundle) {
        Texts german = Texts.at(bundle, Locale.GERMAN);
        for (String key : german.keys()) {
            assertFalse(ENGLISH.matcher(german.pattern(key)).find(), key);
        }
    }

    /** Sentences with lists, phrases and other sentences in them, as results hold them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "The curve can be explained in more than one way: spacing 0.61 µm, gap 2.1 µm; or"
                        + " thickness 3.0 µm, equalisation (3180 µs on the tape and 120 µs in"
                        + " replay); or upper edge of an amplifier 15.5 kHz."
                        + "|Die Kurve lässt sich auf mehr als eine Weise erklären: Abstand 0,61 µm,"
                        + " Spalt 2,1 µm; oder Schichtdicke 3,0 µm, Entzerrung (3180 µs auf dem Band"
                        + " und 120 µs bei der Wiedergabe); oder obere Grenze eines Verstärkers"
                        + " 15,5 kHz.",
                "A space between tape and head (dirt, worn or slack tape guidance) and a wide gap or"
                        + " a head that stands askew look alike above 5.5 kHz on this recording."
                        + "|Ein Abstand zwischen Band und Kopf (Schmutz, abgenutzte oder lockere"
                        + " Bandführung) und ein breiter Spalt oder ein schief stehender Kopf sehen"
                        + " in dieser Aufnahme oberhalb von 5,5 kHz gleich aus.",
                "A head that stands 3.1 ± 0.2 arc min askew takes 1.5 dB at 10 kHz."
                        + "|Ein um 3,1 ± 0,2 Winkelminuten schief stehender Kopf nimmt bei 10 kHz"
                        + " 1,5 dB weg.",
                "Tones that do not belong to the list: 1012.3 Hz at 5.0 s, 200 Hz at 7.5 s and more."
                        + "|Töne, die nicht zur Liste gehören: 1012,3 Hz bei 5,0 s, 200 Hz bei 7,5 s"
                        + " und weitere.",
                "At full scale, and so perhaps clipped: tone 1 (1000 Hz), tone 4 (315 Hz). Record at"
                        + " a lower level."
                        + "|An der Aussteuerungsgrenze und damit vielleicht übersteuert: Ton 1"
                        + " (1000 Hz), Ton 4 (315 Hz). Mit niedrigerem Pegel aufzeichnen.",
                "At 1.25 s of the recording 5.5 ms of sound are missing. Between 2.5 s and 3.5 s of"
                        + " the recording 4.0 ms were added. There are 2 more such places."
                        + "|Bei 1,25 s der Aufnahme fehlen 5,5 ms Ton. Zwischen 2,5 s und 3,5 s der"
                        + " Aufnahme kamen 4,0 ms hinzu. Es gibt noch 2 weitere solche Stellen.",
                "No take. 2.wav sounds like the programme, but none of its markers is in it. Record"
                        + " the whole programme again, from before its first marker to after its"
                        + " last."
                        + "|No take. 2.wav klingt wie das Programm, enthält aber keine seiner"
                        + " Marken. Das ganze Programm erneut aufzeichnen, von vor seiner ersten"
                        + " Marke bis nach seiner letzten.",
                "The left channel is dead, so there is nothing to compare."
                        + "|Der Kanal links ist tot, also gibt es nichts zu vergleichen."
            })
    void whatIsFilledInIsSaidInGermanToo(String english, String german) {
        assertEquals(german, GERMAN.of(english));
    }
}
