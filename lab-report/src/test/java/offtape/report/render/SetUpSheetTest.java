package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammePlan;
import offtape.core.text.Language;
import offtape.core.unit.TapeSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.InputSource;

/** The page that lies beside a programme. */
class SetUpSheetTest {

    /** 100 frames a second make times that can be read off: frame 7550 is at 1 min 15.5 s. */
    private static final CueSheet SHEET =
            new CueSheet(
                    100,
                    20_000,
                    -20,
                    95.3,
                    List.of(
                            new Cue.Marker("start", ChannelSet.BOTH, 2, 50),
                            new Cue.Tone("reference", ChannelSet.BOTH, 100, 250, 315, 0),
                            new Cue.Silence("silence", ChannelSet.BOTH, 5_996, 400),
                            new Cue.Sweep("sweep", ChannelSet.LEFT, 7_550, 1_000, 16, 22_000, -10),
                            new Cue.Ladder(
                                    "ladder",
                                    ChannelSet.RIGHT,
                                    12_000,
                                    600,
                                    1000,
                                    List.of(
                                            new Cue.Step(12_000, 250, -20),
                                            new Cue.Step(12_350, 250, 12)))));

    private static List<String> rows(String page) {
        return Pattern.compile("<tr>(.*?)</tr>")
                .matcher(page)
                .results()
                .map(m -> m.group(1).replaceAll("<[^>]*>", "|").replace('\u00a0', ' '))
                .map(r -> r.replace("||", "|"))
                .toList();
    }

    @Test
    void timesAndLevelsAreThoseOfTheCueSheet() {
        assertEquals(
                List.of(
                        "|From|Length|Sound|Channel|Level|",
                        "|0:00.0|0.5 s|marker \u201cstart\u201d|both||",
                        "|0:01.0|2.5 s|tone 315 Hz|both|0|",
                        "|1:00.0|4.0 s|silence, recorded|||",
                        "|1:15.5|10.0 s|sweep 16 Hz to 22 kHz|left|\u221210|",
                        "|2:00.0|6.0 s|ladder 1 kHz, 2 steps|right|\u221220 to +12|"),
                rows(SetUpSheet.html(SHEET, Language.ENGLISH)));
    }

    @Test
    void theHeadSaysWhatTheProgrammeIs() {
        String page = SetUpSheet.html(SHEET, Language.ENGLISH).replace('\u00a0', ' ');
        assertTrue(
                page.contains(
                        "Programme for 9.53 cm/s: 3 min 20 s, 100 Hz; reference tone at \u221220.0"
                                + " dBFS, loudest tone at \u22128.0 dBFS."),
                page);
        assertTrue(page.contains("reference tone has 315 Hz"));
        assertTrue(page.contains("The loudest tone is 12 dB above it"));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void everyCueOfAProgrammeHasARow(boolean brief) {
        CueSheet sheet = new ProgrammePlan(new TapeSpeed(190.5), 48_000, -18, brief).sheet();
        assertEquals(
                sheet.cues().size() + 1, rows(SetUpSheet.html(sheet, Language.ENGLISH)).size());
    }

    @Test
    void whatCanHurtOrSpoilIsSaid() {
        String page = SetUpSheet.html(SHEET, Language.ENGLISH);
        for (String word :
                List.of(
                        "Loudspeakers off",
                        "Mains voltage",
                        "licensed",
                        "moving reels",
                        "demagnetiser",
                        "noise reduction",
                        "equaliser",
                        "limiter",
                        "input monitoring",
                        "offtape lineup",
                        ">off-tape<",
                        ">two-pass<",
                        ">reference-tape<",
                        ">loopback<")) {
            assertTrue(page.contains(word), word);
        }
        assertTrue(page.indexOf("cleaner for metal") < page.indexOf("Demagnetise last"));
    }

    @Test
    void thePageIsAllowedItsStyleAndNothingElse() throws Exception {
        String page = SetUpSheet.html(SHEET, Language.ENGLISH);
        Matcher style = Pattern.compile("<style>(.*)</style>", Pattern.DOTALL).matcher(page);
        assertTrue(style.find());
        byte[] digest =
                MessageDigest.getInstance("SHA-256")
                        .digest(style.group(1).getBytes(StandardCharsets.UTF_8));
        String source = "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        assertTrue(
                page.replace("&#39;", "'")
                        .contains("content=\"default-src 'none'; style-src " + source + ";"),
                page.substring(0, 600));
        assertEquals(-1, page.indexOf(" style="));
        assertEquals(-1, page.indexOf("://"));
    }

    @Test
    void thePageIsWellFormed() throws Exception {
        String page = SetUpSheet.html(SHEET, Language.ENGLISH).replaceFirst("<!DOCTYPE html>", "");
        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(page)));
    }

    /** The same instants and levels as in English, as German writes numbers. */
    @Test
    void timesAndLevelsAreToldInGerman() {
        assertEquals(
                List.of(
                        "|Ab|Dauer|Klang|Kanal|Pegel|",
                        "|0:00,0|0,5 s|Marke \u201estart\u201c|beide||",
                        "|0:01,0|2,5 s|Ton 315 Hz|beide|0|",
                        "|1:00,0|4,0 s|Stille, aufgenommen|||",
                        "|1:15,5|10,0 s|Gleitton 16 Hz bis 22 kHz|links|\u221210|",
                        "|2:00,0|6,0 s|Pegelleiter 1 kHz, 2 Stufen|rechts|\u221220 bis +12|"),
                rows(SetUpSheet.html(SHEET, Language.GERMAN)));
    }

    @Test
    void theGermanPageIsGermanThroughout() {
        String page = SetUpSheet.html(SHEET, Language.GERMAN).replace('\u00a0', ' ');
        assertTrue(page.contains("<html lang=\"de\">"));
        assertTrue(
                page.contains(
                        "Programm für 9,53 cm/s: 3 min 20 s, 100 Hz; Bezugston bei \u221220,0 dBFS,"
                                + " lautester Ton bei \u22128,0 dBFS."),
                page);
        String texts = page.replaceAll("(?s)^.*?<body>", "").replaceAll("<[^>]*>", " | ");
        assertEquals(
                List.of(),
                Pattern.compile("\\b(?:the|of|and|is|with|from|no|not|than|which)\\b")
                        .matcher(texts)
                        .results()
                        .map(MatchResult::group)
                        .toList());
    }

    @Test
    void whatCanHurtOrSpoilIsSaidInGermanToo() {
        String page = SetUpSheet.html(SHEET, Language.GERMAN);
        for (String word :
                List.of(
                        "Lautsprecher aus",
                        "Netzspannung",
                        "auch ausgeschaltet",
                        "zugelassenen",
                        "drehenden Spulen",
                        "Andruckrolle",
                        "Entmagnetisierer",
                        "Aufnahme sperren",
                        "offtape lineup",
                        ">off-tape<",
                        ">two-pass<",
                        ">reference-tape<",
                        ">loopback<")) {
            assertTrue(page.contains(word), word);
        }
        assertTrue(page.indexOf("Reiniger für Metall") < page.indexOf("Zuletzt entmagnetisieren"));
    }
}
