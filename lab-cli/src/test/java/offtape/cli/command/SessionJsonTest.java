package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Stream;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What scripts rely on: one document on standard output, by its schema, the same every time. */
class SessionJsonTest {

    private static final Set<String> FILES =
            Set.of(
                    "results.json",
                    "report.html",
                    "response.csv",
                    "response-bands.csv",
                    "response-contour.csv",
                    "response-level.csv",
                    "sweep-harmonics.csv",
                    "ladder.csv",
                    "noise.csv",
                    "speed.csv",
                    "speed-readings.csv",
                    "speed-passes.csv",
                    "speed-spectrum.csv",
                    "speed-components.csv",
                    "transport-speed.csv",
                    "transport-spectrum.csv",
                    "transport-components.csv",
                    "crosstalk.csv",
                    "interchannel-delay.csv",
                    "dropouts.csv",
                    ".offtape-manifest.json");

    @TempDir private static Path folder;

    private static Lab lab;
    private static Path recording;
    private static Tool.Outcome outcome;

    @BeforeAll
    static void oneSession() throws IOException {
        lab = new Lab(folder);
        lab.file(
                "machine.json",
                """
                {"format": "offtape-machine", "version": 1, "seed": 3,
                 "transport": {"speedDeviationPercent": 0.4,
                   "components": [{"name": "capstan", "frequencyHz": 9.5, "peakPercent": 0.1}]},
                 "saturation": {"levelAtK3ThreePercentDb": 8},
                 "crosstalk": {"leftToRightDb": -45, "rightToLeftDb": -44},
                 "hiss": {"levelDb": -60}, "hum": {"mainsHz": 50,
                   "lines": [{"harmonic": 1, "levelDb": -55}]}}
                """);
        recording = lab.path("return.wav");
        Tool.Outcome played =
                Tool.run(
                        "simulate",
                        "--programme",
                        lab.programme(),
                        "--machine",
                        lab.path("machine.json"),
                        "--out",
                        recording);
        assertEquals(0, played.code(), played.err());
        Files.setLastModifiedTime(recording, FileTime.from(Instant.parse("2026-03-01T12:00:00Z")));
        outcome = measure("first");
        assertEquals(0, outcome.code(), outcome.err());
    }

    private static Tool.Outcome measure(String out) {
        return Tool.run(
                "measure",
                recording,
                "--programme",
                lab.programme(),
                "--out",
                lab.path(out),
                "--json",
                "--machine-name",
                "Werkstatt <1> \"ä\" & Co",
                "--tape",
                "old stock",
                "--note",
                "before cleaning",
                "--tape-speed",
                "15ips");
    }

    private static JsonNode json(String text) {
        try {
            return new ObjectMapper().readTree(text);
        } catch (IOException e) {
            throw new IllegalStateException(text, e);
        }
    }

    private static String text(String file) {
        return new String(lab.bytes(lab.path(file)), StandardCharsets.UTF_8);
    }

    private static JsonSchema schema(String text) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
    }

    @Test
    void standardOutputHoldsTheResultsFileAndNothingElse() {
        assertEquals(text("first/results.json"), outcome.out());
        assertEquals(FILES, lab.namesIn("first"));
    }

    @Test
    void resultsFollowTheirSchema() {
        JsonSchema results = schema(Schemas.results());
        assertEquals(Set.of(), results.validate(outcome.out(), InputFormat.JSON));
    }

    @Test
    void theProgrammeFollowsItsSchema() {
        JsonSchema programme = schema(Schemas.programme());
        assertEquals(
                Set.of(), programme.validate(text("programme/programme.json"), InputFormat.JSON));
        Path brief = lab.path("brief");
        assertEquals(0, Tool.run("prepare", "--short", "--out", brief).code());
        assertEquals(Set.of(), programme.validate(text("brief/programme.json"), InputFormat.JSON));
    }

    @Test
    void theSessionSaysWhatTheUserSaid() {
        JsonNode session = json(outcome.out()).get("session");
        assertEquals("Werkstatt <1> \"ä\" & Co", session.get("machineName").asText());
        assertEquals("old stock", session.get("tape").asText());
        assertEquals("before cleaning", session.get("note").asText());
        assertEquals(381.0, session.get("tapeSpeedMmPerS").asDouble());
        assertEquals("reference-tape", session.get("mode").asText());
        assertEquals(Mini.sheet().referenceDbfs(), session.get("referenceDbfs").asDouble());
        assertEquals("2026-03-01T12:00:00Z", session.get("madeAt").asText());
        assertTrue(text("first/report.html").contains("Werkstatt &lt;1&gt;"));
    }

    @Test
    void everyHeadlineIsKnownWithUnitAndUncertaintyOrUnknownWithAReason() {
        List<String> faults = new ArrayList<>();
        int headlines = check(json(outcome.out()), "", faults);
        assertEquals(List.of(), faults);
        assertTrue(headlines > 40, headlines + " headlines");
    }

    private static int check(JsonNode node, String place, List<String> faults) {
        int count = 0;
        if (node.isDouble() && !Double.isFinite(node.asDouble())) {
            faults.add(place);
        }
        if (node.has("value") && (node.has("unit") || node.has("reason"))) {
            boolean known =
                    node.get("value").isNumber()
                            && !node.path("unit").asText().isBlank()
                            && node.path("uncertainty").asDouble(-1) > 0;
            boolean unknown =
                    node.get("value").isNull() && node.path("reason").asText().endsWith(".");
            if (known == unknown) {
                faults.add(place + " " + node);
            }
            count++;
        }
        for (Map.Entry<String, JsonNode> member : node.properties()) {
            count += check(member.getValue(), place + "." + member.getKey(), faults);
        }
        for (JsonNode element : node.isArray() ? node : List.<JsonNode>of()) {
            count += check(element, place + "[]", faults);
        }
        return count;
    }

    @Test
    void theSameReturnGivesTheSameBytesWhateverTheCountryAndTimeZone() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kathmandu"));
            Tool.Outcome again = measure("second");
            assertEquals(outcome.out(), again.out());
            assertEquals(
                    outcome.err().replace("first", "second"), again.err(), "words on the terminal");
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        for (String file : FILES) {
            assertArrayEquals(
                    lab.bytes(lab.path("first/" + file)),
                    lab.bytes(lab.path("second/" + file)),
                    file);
        }
    }

    @Test
    void messagesGoToStandardErrorWithoutControlCharacters() {
        assertTrue(outcome.err().startsWith("[1/2] Measuring return.wav\n"), outcome.err());
        assertTrue(
                outcome.err().endsWith("Report: " + lab.path("first/report.html") + "\n"),
                outcome.err());
        assertFalse(outcome.err().chars().anyMatch(c -> c < ' ' && c != '\n'), outcome.err());
    }

    @Test
    void speedPrintsTheSpeedObjectAlone() {
        Path tone = lab.wav("tone.wav", Lab.tone(3150, 0.1, 8));
        Tool.Outcome speed = Tool.run("speed", tone, "--json");
        assertEquals(0, speed.code(), speed.err());
        assertEquals("", speed.err());
        // the speed object in the place it has in results
        String whole = outcome.out();
        JsonNode results = json(whole);
        ((com.fasterxml.jackson.databind.node.ObjectNode) results).set("speed", json(speed.out()));
        assertEquals(
                Set.of(), schema(Schemas.results()).validate(results.toString(), InputFormat.JSON));
    }

    @Test
    void quietLeavesResultsAndErrorsOnly() {
        Path out = lab.path("quiet");
        Tool.Outcome quiet =
                Tool.run("prepare", "--short", "--quiet", "--out", out, "--tape-speed", "7.5ips");
        assertEquals(new Tool.Outcome(0, "", ""), quiet);
        assertEquals(190.5, json(text("quiet/programme.json")).get("tapeSpeedMmPerS").asDouble());
        Tool.Outcome speed = Tool.run("speed", "--quiet", lab.wav("q.wav", Lab.tone(1000, 0.1, 6)));
        assertEquals("", speed.err());
        assertTrue(speed.out().startsWith("Tone  "), speed.out());
        Tool.Outcome failed = Tool.run("speed", "--quiet", lab.path("nowhere.wav"));
        assertTrue(failed.err().startsWith("offtape: There is no file "), failed.err());
    }

    @Test
    void onlyVerboseShowsTheTrace() {
        Object[] line = Lab.line("speed", lab.path("nowhere.wav"));
        assertEquals(1, Tool.run(line).err().lines().count());
        Object[] verbose = Stream.concat(Stream.of(line), Stream.of("--verbose")).toArray();
        Tool.Outcome outcome = Tool.run(verbose);
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("    at offtape."), outcome.err());
    }
}
