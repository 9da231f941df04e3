package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import offtape.report.compare.Comparison;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class ReportWriterTest {

    private static final int MOST_DRAWING_BYTES = 60_000;
    private static final int MOST_PAGE_BYTES = 1_000_000;

    static Stream<String> pages() {
        return Stream.concat(
                Degenerate.all().map(ReportWriter::html),
                Stream.of(
                        ReportWriter.html(Scenario.before()),
                        pair(Scenario.before(), Scenario.after()),
                        pair(Scenario.empty(null), Scenario.after()),
                        pair(Degenerate.hostile(), Degenerate.hostile())));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void pagesAreWellFormedAndTheirAnchorsUnique(String page) throws Exception {
        Document document = parse(page);
        Set<String> ids = new HashSet<>();
        for (Element element : Svg.elements(document, "*")) {
            String id = element.getAttribute("id");
            assertTrue(id.isEmpty() || ids.add(id), "twice: " + id);
        }
        for (Element link : Svg.elements(document, "a")) {
            assertTrue(ids.contains(link.getAttribute("href").substring(1)));
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void pagesAskForNothingAndRunNothingButTheirOwn(String page) throws Exception {
        Document document = parse(page);
        for (Element element : Svg.elements(document, "*")) {
            assertFalse(element.hasAttribute("src"), element.getTagName());
            String href = element.getAttribute("href");
            assertTrue(href.isEmpty() || href.startsWith("#"), href);
            for (int i = 0; i < element.getAttributes().getLength(); i++) {
                assertFalse(element.getAttributes().item(i).getNodeName().startsWith("on"));
            }
        }
        assertEquals(1, Svg.elements(document, "script").size());
        assertTrue(Svg.elements(document, "img").isEmpty());
        assertTrue(Svg.elements(document, "link").isEmpty());
        assertFalse(page.replace("url(#", "").contains("url("), "style asks for a file");
        assertFalse(page.contains("@import"));
        String style = Svg.elements(document, "style").get(0).getTextContent();
        String script = page.replaceFirst("(?s).*<script[^>]*>(.*)</script>.*", "$1");
        assertTrue(
                page.contains(
                        "content=\"default-src &#39;none&#39;; script-src &#39;"
                                + digest(script)
                                + "&#39;; style-src &#39;"
                                + digest(style)
                                + "&#39;; base-uri &#39;none&#39;; form-action &#39;none&#39;\""),
                "policy");
        for (Element element : Svg.elements(document, "*")) {
            assertFalse(element.hasAttribute("style"), element.getTagName());
        }
        assertEquals(1, Svg.elements(document, "style").size());
    }

    private static String digest(String text) throws Exception {
        byte[] digest =
                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        return "sha256-" + Base64.getEncoder().encodeToString(digest);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void pagesHoldNoNumberThatIsNone(String page) {
        String data = page.replaceFirst("(?s)<script.*</script>", "");
        Matcher matcher = Pattern.compile("NaN|Infinity|>null<|\\bnull\\b").matcher(data);
        assertFalse(matcher.find(), () -> data.substring(Math.max(0, matcher.start() - 80)));
    }

    /** The first link leads past all that stands before the contents. */
    @ParameterizedTest
    @MethodSource("pages")
    void theContentsCanBeSkippedTo(String page) throws Exception {
        Document document = parse(page);
        Element first = Svg.elements(document, "a").get(0);
        assertEquals("#main", first.getAttribute("href"));
        assertEquals("main", Svg.elements(document, "main").get(0).getAttribute("id"));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void drawingsAreSmallAndNamed(String page) throws Exception {
        for (String svg : Svg.drawings(page)) {
            Element root = Svg.parse(svg).getDocumentElement();
            assertEquals("img", root.getAttribute("role"));
            assertFalse(root.getElementsByTagName("title").item(0).getTextContent().isBlank());
            assertFalse(root.getElementsByTagName("desc").item(0).getTextContent().isBlank());
            int bytes = svg.getBytes(StandardCharsets.UTF_8).length;
            assertTrue(bytes < MOST_DRAWING_BYTES, "bytes " + bytes);
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void tablesAndHeadingsAreInOrder(String page) throws Exception {
        Document document = parse(page);
        for (Element table : Svg.elements(document, "table")) {
            assertEquals(1, table.getElementsByTagName("caption").getLength());
        }
        for (Element head : Svg.elements(document, "th")) {
            assertTrue(Set.of("row", "col").contains(head.getAttribute("scope")));
        }
        int last = 0;
        Matcher matcher = Pattern.compile("<h([1-6])[ >]").matcher(page);
        while (matcher.find()) {
            int level = Integer.parseInt(matcher.group(1));
            assertTrue(level <= last + 1, "a heading is skipped");
            last = level;
        }
        assertEquals(1, Svg.elements(document, "h1").size());
        assertEquals(1, Svg.elements(document, "main").size());
    }

    @Test
    void sameResultsGiveTheSamePage() {
        assertEquals(ReportWriter.html(Scenario.before()), ReportWriter.html(Scenario.before()));
    }

    @Test
    void everyQuestionHasItsChart() throws Exception {
        String page = ReportWriter.html(Scenario.before());
        List<String> titles =
                Svg.drawings(page).stream()
                        .map(svg -> svg.replaceAll("(?s).*<title[^>]*>(.*?)</title>.*", "$1"))
                        .toList();
        assertEquals(
                List.of(
                        "Frequency response of both channels",
                        "Widest bands around 1 kHz",
                        "Response of the louder sweep less that of the quiet one",
                        "What takes the highs away on the left channel",
                        "What takes the highs away on the right channel",
                        "Wow and flutter over time",
                        "Speed deviation over time",
                        "Spectrum of the speed deviation",
                        "Deviation of the transport itself over time",
                        "Spectrum of the transport itself",
                        "Third harmonic (K3) against record level",
                        "Compression against record level",
                        "Replay level of treble tones against record level",
                        "Harmonics of the sweep against frequency",
                        "Noise of recorded silence in third-octave bands",
                        "Delay between the channels over time",
                        "Crosstalk over frequency"),
                titles);
        for (Element figure : Svg.elements(parse(page), "figure")) {
            assertEquals(1, figure.getElementsByTagName("figcaption").getLength());
        }
    }

    @Test
    void theOpeningTellsTheFiguresInWords() {
        String page = ReportWriter.html(Scenario.before()).replace('\u00a0', ' ');
        assertTrue(page.contains("Quiet tones from 32.4 Hz to 9.8 kHz come back"), "band");
        assertTrue(page.contains("The tape runs 0.412 % slow"), "speed");
        assertTrue(page.contains("wavers by 0.163 %"), "wow and flutter");
        assertTrue(page.contains("up to 4.4 dB above the reference"), "the channel that is worse");
        assertTrue(page.contains("hiss of silent tape lies 55.4 dB below"), "the noisier channel");
        assertTrue(page.contains("▲ Warning:"), "warnings come first");
        assertTrue(page.indexOf("▲ Warning:") < page.indexOf("class=\"headline\""));
    }

    @Test
    void unknownFiguresShowTheirReason() {
        String page = ReportWriter.html(Scenario.before());
        assertTrue(page.contains("Needs a loopback session of the interface."));
    }

    /** K3 = 1 % at 1.33 dB left, 1 dB compression at 5.6 dB right: the range both share. */
    @Test
    void theUsefulRangeIsWhatBothChannelsShare() {
        UsefulRange range = UsefulRange.shared(Scenario.before()).orElseThrow();
        assertEquals(6.1 - 4.77, range.fromDb(), 1e-9);
        assertEquals(4.4 + 1.2, range.toDb(), 1e-9);
    }

    @Test
    void aSessionBesideItselfKeepsItsHeads() throws Exception {
        Results same = Scenario.before();
        String page = pair(same, same).replace('\u00a0', ' ');
        for (String head : List.of("Left before, dB", "Right before, dB", "Left after, dB")) {
            assertEquals(2, page.split(head, -1).length, head);
        }
        assertTrue(page.contains("None of the 16 headline figures known in both sessions changed"));
    }

    @Test
    void userTextStaysText() throws Exception {
        String page = ReportWriter.html(Degenerate.hostile());
        assertFalse(page.contains("<img"), "an element came through");
        assertEquals(1, page.split("</script>", -1).length - 1, "an end tag came through");
        Document document = parse(page);
        assertEquals(Degenerate.HOSTILE, Svg.elements(document, "h1").get(0).getTextContent());
        assertTrue(
                Svg.elements(document, "title")
                        .get(0)
                        .getTextContent()
                        .startsWith(Degenerate.HOSTILE));
    }

    @Test
    void pagesStayUnderAMegabyte() throws Exception {
        Path dir = Files.createDirectories(Path.of("target", "report-sample"));
        write(dir.resolve("report.html"), ReportWriter.html(Scenario.before()));
        write(dir.resolve("pair.html"), pair(Scenario.before(), Scenario.after()));
        write(dir.resolve("empty.html"), ReportWriter.html(Scenario.empty(null)));
    }

    private static void write(Path file, String page) throws Exception {
        Files.writeString(file, page);
        assertTrue(Files.size(file) < MOST_PAGE_BYTES, file.toString());
    }

    private static String pair(Results before, Results after) {
        return ReportWriter.html(Comparison.of(before, after, List.of()), before, after);
    }

    private static Document parse(String page) throws Exception {
        return Svg.parse(page.replaceFirst("<!DOCTYPE html>", ""));
    }
}
