package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a name, a note or another person's file holds, each output shows it and is unmoved. */
class InertOutputsTest {

    /** Members that hold one of a few words; another word is refused or means nothing. */
    private static final Set<String> WORDS =
            Set.of("format", "mode", "madeAt", "recordingSha256", "channel", "decision", "outcome");

    @TempDir private static Path folder;

    private static Lab lab;
    private static String file;

    /** A session of a file with such a name, of which such things are said. */
    @BeforeAll
    static void oneBatch() throws Exception {
        lab = new Lab(folder);
        file = fileName();
        lab.same(file, lab.programme().resolve("programme.wav"));
        lab.file(
                "limits.json",
                "{\"format\": \"offtape-limits\", \"version\": 1, \"name\": "
                        + json(Hostile.TEXT.replaceAll("[\\p{Cntrl}\u202e\u2066\u0080-\u009f]", ""))
                        + ", \"source\": "
                        + json(Hostile.TEXT)
                        + ", \"limits\": [{\"quantity\": \"wow-and-flutter\", \"most\": 0.15,"
                        + " \"clause\": "
                        + json(Hostile.TEXT)
                        + "}]}");
        lab.file("list.csv", "file,note\n" + cell(file) + "," + cell(Hostile.TEXT) + "\n");
        Tool.Outcome outcome =
                Tool.run(
                        "measure",
                        "--batch",
                        lab.path("list.csv"),
                        "--programme",
                        lab.programme(),
                        "--out",
                        lab.path("archive"),
                        "--machine-name",
                        Hostile.TEXT,
                        "--tape",
                        Hostile.TEXT,
                        "--mode",
                        "reference-tape",
                        "--verbose");
        Hostile.checkTerminal(outcome);
        assertEquals(0, outcome.code(), outcome.err());
    }

    /** As hostile as the system's names of files can be. */
    private static String fileName() {
        try {
            return Path.of(Hostile.NAME + ".wav").toString();
        } catch (InvalidPathException e) {
            return Hostile.NAME.replaceAll("[^\\x00-\\x7f]", "") + ".wav";
        }
    }

    private static String json(String text) {
        return TextNode.valueOf(text).toString();
    }

    private static String cell(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }

    private static Path session() throws IOException {
        try (Stream<Path> all = Files.list(lab.path("archive"))) {
            return all.filter(Files::isDirectory).findFirst().orElseThrow();
        }
    }

    private static int checkAll(Path where) throws Exception {
        int checked = 0;
        try (Stream<Path> all = Files.walk(where)) {
            for (Path path : all.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(path);
                switch (path.getFileName().toString().replaceAll(".*\\.", "")) {
                    case "csv" -> Hostile.checkTable(text);
                    case "json" -> Hostile.checkJson(text);
                    case "html" -> Hostile.checkPage(text);
                    default -> throw new AssertionError(path);
                }
                checked++;
            }
        }
        return checked;
    }

    @Test
    void theSessionAndTheSummaryAreInertAndTellWhatWasSaid() throws Exception {
        assertTrue(checkAll(lab.path("archive")) > 20);
        JsonNode said =
                new ObjectMapper()
                        .readTree(Files.readString(session().resolve("results.json")))
                        .get("session");
        assertEquals(Hostile.TEXT.strip(), said.get("machineName").textValue().strip());
        String page = Files.readString(session().resolve("report.html"));
        assertTrue(page.contains("&lt;img src=x onerror=alert(1)&gt;&amp;&quot;&#39;"), "it shows");
    }

    /** Every text that a stranger's results hold is an attack. */
    @Test
    void resultsOfStrangersAreInertInComparisonAndHistory() throws Exception {
        JsonNode results =
                new ObjectMapper().readTree(Files.readString(session().resolve("results.json")));
        for (int day = 1; day <= 3; day++) {
            ObjectNode strange = (ObjectNode) attacked(results.deepCopy(), "");
            ObjectNode session = (ObjectNode) strange.get("session");
            session.put("madeAt", "2026-0" + day + "-01T00:00:00Z");
            session.put("recordingSha256", "0" + day + "ab".repeat(31));
            lab.file("strange-" + day + "/results.json", strange.toString());
        }
        Path one = lab.path("strange-1");
        Path two = lab.path("strange-2");
        Tool.Outcome compared = Tool.run("compare", one, two, "--out", lab.path("compared"));
        Hostile.checkTerminal(compared);
        assertEquals(0, compared.code(), compared.err());
        Tool.Outcome history =
                Tool.run("history", one, two, lab.path("strange-3"), "--out", lab.path("history"));
        Hostile.checkTerminal(history);
        assertEquals(0, history.code(), history.err());
        Tool.Outcome printed = Tool.run("compare", one, two, "--out", lab.path("again"), "--json");
        Hostile.checkTerminal(printed);
        Hostile.checkJson(printed.out());
        assertTrue(checkAll(lab.path("compared")) + checkAll(lab.path("history")) >= 4);
    }

    private static JsonNode attacked(JsonNode node, String member) {
        if (node instanceof ObjectNode object) {
            for (String name : List.copyOf(names(object))) {
                object.set(name, attacked(object.get(name), name));
            }
        } else if (node instanceof ArrayNode list) {
            for (int i = 0; i < list.size(); i++) {
                list.set(i, attacked(list.get(i), member));
            }
        } else if (node.isTextual() && !WORDS.contains(member)) {
            return TextNode.valueOf(Hostile.TEXT + node.textValue());
        }
        return node;
    }

    private static List<String> names(ObjectNode object) {
        return object.properties().stream().map(e -> e.getKey()).toList();
    }

    @Test
    void theListeningPageIsInert() throws Exception {
        Path a = lab.wav("quiet-" + file, Lab.noise(1, 0.1, 1), Lab.noise(2, 0.1, 1));
        Tool.Outcome listen =
                Tool.run(
                        "listen",
                        a,
                        a,
                        "--out",
                        lab.path("listen.html"),
                        "--trials",
                        "5",
                        "--json");
        Hostile.checkTerminal(listen);
        String page = Files.readString(lab.path("listen.html"));
        assertFalse(page.contains("<img") || page.contains("alert(1)<"), "elements");
        assertEquals(4, page.split("</script>", -1).length - 1);
        assertFalse(page.chars().anyMatch(c -> c == 0x202E || c == 0x9B || c == 0x1B), "steering");
        assertFalse(
                page.toLowerCase(java.util.Locale.ROOT).contains("\\u202e"), "decoded by the page");
    }

    /** Refusals repeat what was typed and what files hold. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "FILE",
                "measure FILE --programme FILE --out FILE",
                "measure --batch FILE --out x",
                "measure --batch evil.csv --programme programme --out x",
                "measure a.wav --programme programme --out x --mode FILE",
                "measure a.wav --programme programme --out x --FILE",
                "speed FILE --tape-speed FILE",
                "compare FILE FILE --out x",
                "history FILE --out x --serviced FILE",
                "faults FILE",
                "simulate --programme programme --machine evil.json --out x",
                "simulate --programme evil --machine FILE --out x",
                "correct FILE --out x --target FILE",
                "preview --session FILE FILE --out x",
                "transfer --session FILE FILE --out x",
                "realign FILE FILE --out x",
                "listen FILE FILE --out x",
                "tones FILE --list evil.json",
                "prepare --out x --tape-speed FILE",
            })
    void refusalsAreInert(String line) {
        lab.file("evil.json", "{" + json(Hostile.TEXT) + ": 1}");
        lab.file("evil.csv", "file," + cell(Hostile.TEXT) + "\na.wav,b\n");
        lab.file(
                "evil/programme.json",
                "{\"format\": \"offtape-programme\", \"version\": 1, \"sampleRate\": 48000,"
                        + " \"frames\": 48000, \"referenceDbfs\": -18, \"cues\": [{\"id\": "
                        + json(Hostile.TEXT)
                        + "}]}");
        Object[] words =
                Stream.of(line.split(" "))
                        .map(w -> w.matches("evil.*|programme|x") ? lab.path(w).toString() : w)
                        .map(w -> w.replace("FILE", file))
                        .toArray();
        for (Object last : List.of("--quiet", "--verbose")) {
            Tool.Outcome refused = Tool.run(Lab.line(words, last));
            assertTrue(refused.code() == 2 || refused.code() == 3, refused.err());
            Hostile.checkTerminal(refused);
        }
    }
}
