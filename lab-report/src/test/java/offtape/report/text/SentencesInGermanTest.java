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

    /** Those of this module and of the one that it stands on. */
    static List<String> bundles() throws IOException {
        List<String> all = new ArrayList<>();
        for (String module : List.of("core", "report")) {
            try (InputStream in =
                    SentencesInGermanTest.class.getResourceAsStream(
                            "/META-INF/offtape/sentences-" + module)) {
                new String(in.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .filter(line -> !line.isBlank())
                        .forEach(all::add);
            }
        }
        return all;
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
                "/r/take 2.wav is damaged at 12.5 s: the checksum of a block does not agree. Export"
                        + " or copy the recording again."
                        + "|/r/take 2.wav ist bei 12,5 s beschädigt: die Prüfsumme eines Blocks"
                        + " stimmt nicht. Die Aufnahme erneut exportieren oder kopieren.",
                "a.wav is empty. Export or copy the recording again."
                        + "|a.wav ist leer. Die Aufnahme erneut exportieren oder kopieren.",
                "a.wav cannot be used: its header states 70 channels; up to 64 are read. Export the"
                        + " recording as linear WAV (16 or 24 bit, or float)."
                        + "|a.wav lässt sich nicht verwenden: ihr Kopf nennt 70 Kanäle; gelesen"
                        + " werden bis zu 64. Die Aufnahme als lineare WAV-Datei exportieren (16"
                        + " oder 24 Bit oder Gleitkomma).",
                "out/a.html cannot be written: the disk is full; make room or choose another disk."
                        + " What was made is kept in out/a-kept."
                        + "|out/a.html kann nicht geschrieben werden: der Datenträger ist voll; Platz"
                        + " schaffen oder einen anderen Datenträger wählen. Das Erzeugte ist"
                        + " aufbewahrt in out/a-kept.",
                "m.json: heads: \"azimuthArcMinutes\" is 130.5; it must lie between -120 and 120"
                        + " arc minutes."
                        + "|m.json: heads: \"azimuthArcMinutes\" ist 130,5, muss aber zwischen -120"
                        + " und 120 Winkelminuten liegen.",
                "m.json: the member \"hed\" is not known. Perhaps \"heads\" is meant. Known here:"
                        + " bias, heads."
                        + "|m.json: Das Element \"hed\" ist nicht bekannt. Vielleicht ist \"heads\""
                        + " gemeint. Hier bekannt: bias, heads.",
                "p/programme.json, cue \"x\", step 2: levelDb must lie between -140.0 and 80.0."
                        + " Correct the cue sheet or write the programme again with"
                        + " \"offtape prepare\"."
                        + "|p/programme.json, Abschnitt \"x\", Stufe 2: levelDb muss zwischen -140,0"
                        + " und 80,0 liegen. Den Zeitplan berichtigen oder das Programm mit"
                        + " \"offtape prepare\" neu schreiben.",
                "r.json is larger than the results of a session can be (64 MiB)."
                        + "|r.json ist größer als zulässig (die Ergebnisse einer Sitzung: höchstens"
                        + " 64 MiB).",
                "Another run is just writing out/a. Wait until it has finished or choose another"
                        + " name."
                        + "|Ein anderer Lauf schreibt gerade out/a. Warten, bis er fertig ist, oder"
                        + " einen anderen Namen wählen.",
                "take-up reel, 2nd harmonic|Aufwickelspule, 2. Harmonische",
                "a.wav has 8 channels; there is no channel 9."
                        + "|a.wav hat 8 Kanäle; es gibt keinen Kanal 9.",
                "the mark before it did not come back on channel 2; check that the machine is in"
                        + " record and its replay head is heard, or allow more delay with --tail."
                        + "|die Marke davor kam auf Kanal 2 nicht zurück; prüfen, ob die Maschine"
                        + " aufnimmt und ihr Wiedergabekopf zu hören ist, oder mit --tail mehr"
                        + " Verzögerung zulassen.",
                "The left channel is dead, so there is nothing to compare."
                        + "|Der Kanal links ist tot, also gibt es nichts zu vergleichen."
            })
    void whatIsFilledInIsSaidInGermanToo(String english, String german) {
        assertEquals(german, GERMAN.of(english));
    }
}
