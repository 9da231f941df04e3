package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Names that attack whatever shows them, and what each kind of output must then be like. */
final class Hostile {

    /** What may not stand in a file's name is left out of it. */
    static final String NAME =
            "=1+1\u001b]0;T\u0007\u001b[2J\u009b31m\u202eevil\u2066<img src=x onerror=alert(1)>&\"'"
                    + "\u0085\r\nofftape: All is well.\n;=2+2\t@SUM(A1)\uFF1D3";

    /** The same with the end of a script and of a comment. */
    static final String TEXT = NAME + "</script><script>alert(1)</script>-->]]>";

    /** Controls but for the line feed, and what turns the direction of writing around. */
    private static final Pattern STEERING =
            Pattern.compile(
                    "[\\x00-\\x09\\x0b-\\x1f\\x7f-\\x9f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069]");

    private static final Pattern CELL =
            Pattern.compile("\\G(?:\"((?:[^\"]|\"\")*)\"|([^,\"\r\n]*))(,|\r\n)");

    private static final Pattern FORMULA =
            Pattern.compile("^\\s*[=+\\-@\\uFF1D\\uFF0B\\uFF0D\\uFF20]|^[\\t\\r\\n]");

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

    private Hostile() {}

    /** What stood on the terminal: nothing steers it, and no name begins a line of its own. */
    static void checkTerminal(Tool.Outcome outcome) {
        for (String text : List.of(outcome.out(), outcome.err())) {
            Matcher m = STEERING.matcher(text);
            assertFalse(m.find(), () -> Integer.toHexString(m.group().charAt(0)) + " in " + text);
            assertFalse(text.contains("\nofftape: All is well."), text);
        }
    }

    static void checkJson(String text) throws Exception {
        assertFalse(STEERING.matcher(text).find());
        JsonNode read = new ObjectMapper().readTree(text);
        assertTrue(read.isObject());
    }

    /** As a spreadsheet reads it, whether it parts cells by commas, semicolons or tabs. */
    static void checkTable(String text) {
        String shown = text.replace("\r\n", "").replace("\n", "").replace("\t", "");
        assertFalse(STEERING.matcher(shown).find(), text);
        List<String> cells = new ArrayList<>();
        Matcher m = CELL.matcher(text);
        int end = 0;
        while (m.find()) {
            cells.add(m.group(1) == null ? m.group(2) : m.group(1).replace("\"\"", "\""));
            end = m.end();
        }
        assertEquals(text.length(), end, "the table can be read to its end: " + text);
        for (String line : text.split("[\r\n]+")) {
            cells.addAll(List.of(line.split("[;\t]")));
        }
        for (String cell : cells) {
            String bare = cell.startsWith("\"") ? cell.substring(1) : cell;
            assertFalse(
                    FORMULA.matcher(bare).find() && !NUMBER.matcher(bare.split(",")[0]).matches(),
                    cell);
        }
    }

    /** A page that holds the elements of the program's own and nothing that loads or runs. */
    static void checkPage(String text) throws Exception {
        String shown = text.replace("\t", "").replace("\r", "");
        assertFalse(STEERING.matcher(shown).find());
        assertFalse(text.contains("unsafe"), "the policy");
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Document document =
                factory.newDocumentBuilder()
                        .parse(
                                new InputSource(
                                        new StringReader(
                                                text.replaceFirst("<!DOCTYPE html>", ""))));
        Set<String> elements = new TreeSet<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            elements.add(element.getTagName());
            for (int a = 0; a < element.getAttributes().getLength(); a++) {
                String name = element.getAttributes().item(a).getNodeName();
                assertFalse(name.startsWith("on") || name.equals("src") || name.equals("style"));
            }
        }
        checkScripts(document, text);
        elements.retainAll(Set.of("img", "iframe", "object", "embed", "link", "base"));
        assertEquals(Set.of(), elements);
        assertEquals(1, document.getElementsByTagName("style").getLength());
    }

    /** Nothing runs but the one script that the page's policy names by its digest. */
    private static void checkScripts(Document document, String text) throws Exception {
        NodeList scripts = document.getElementsByTagName("script");
        assertTrue(scripts.getLength() <= 1, "scripts");
        if (scripts.getLength() == 0) {
            return;
        }
        for (int a = 0; a < scripts.item(0).getAttributes().getLength(); a++) {
            String name = scripts.item(0).getAttributes().item(a).getNodeName();
            assertTrue(name.startsWith("data-"), name);
        }
        // as a browser takes it, which knows no CDATA
        int from = text.indexOf('>', text.indexOf("<script")) + 1;
        String script = text.substring(from, text.indexOf("</script>", from));
        byte[] digest =
                MessageDigest.getInstance("SHA-256")
                        .digest(script.getBytes(StandardCharsets.UTF_8));
        String named = "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        assertTrue(policy(document).contains("script-src " + named + ";"), "not in the policy");
    }

    private static String policy(Document document) {
        NodeList metas = document.getElementsByTagName("meta");
        for (int i = 0; i < metas.getLength(); i++) {
            Element meta = (Element) metas.item(i);
            if (meta.getAttribute("http-equiv").equals("Content-Security-Policy")) {
                return meta.getAttribute("content");
            }
        }
        return "";
    }
}
