package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** An interface that measured itself, and a machine measured through it. */
class LoopbackTest {

    private static final String MACHINE =
            "{\"format\":\"offtape-machine\",\"version\":1,\"mode\":\"%s\",\"seed\":11,"
                    + "\"transport\":{\"components\":[{\"frequencyHz\":3.3,\"peakPercent\":0.06},"
                    + "{\"frequencyHz\":9.5,\"peakPercent\":0.05}]},"
                    + "\"heads\":{\"spacingMm\":30,\"gapMicrometres\":3},"
                    + "\"saturation\":{\"levelAtK3ThreePercentDb\":8},"
                    + "\"electronics\":{\"lowerEdgeHz\":35},\"hiss\":{\"levelDb\":-60}%s}";

    private static final String INTERFACE =
            ",\"recorder\":{\"delaySamples\":611.3,\"noiseDbfs\":-80,\"lowerEdgeHz\":20,"
                    + "\"upperEdgeHz\":18000,\"secondHarmonicPercent\":0.02,"
                    + "\"thirdHarmonicPercent\":0.02}";

    @TempDir private static Path folder;

    private static Lab lab;
    private static Path through;
    private static JsonNode loop;
    private static JsonNode without;
    private static JsonNode direct;
    private static JsonNode truth;

    @BeforeAll
    static void aWorkshop() throws IOException {
        lab = new Lab(folder);
        loop = measured("loop", simulated("loop", "loopback", INTERFACE), "loopback");
        through = simulated("through", "off-tape", INTERFACE);
        without = measured("without", through, "off-tape", "--loopback", lab.path("loop"));
        direct = measured("direct", simulated("direct", "off-tape", ""), "off-tape");
        truth = new ObjectMapper().readTree(lab.path("through.truth.json").toFile());
    }

    private static Path simulated(String name, String mode, String recorder) {
        Path machine = lab.file(name + ".machine.json", MACHINE.formatted(mode, recorder));
        Path wav = lab.path(name + ".wav");
        Tool.Outcome o =
                Tool.run(
                        "simulate",
                        "--programme",
                        lab.programme(),
                        "--machine",
                        machine,
                        "--out",
                        wav);
        assertEquals(0, o.code(), o.err());
        return wav;
    }

    private static JsonNode measured(String name, Path wav, String mode, Object... more)
            throws IOException {
        Object[] line =
                Lab.line(
                        "measure",
                        wav,
                        "--programme",
                        lab.programme(),
                        "--mode",
                        mode,
                        "--out",
                        lab.path(name),
                        "--json");
        Tool.Outcome o = Tool.run(Lab.line(line, more));
        assertEquals(0, o.code(), o.err());
        return new ObjectMapper().readTree(o.out());
    }

    private static double value(JsonNode results, String place) {
        JsonNode value = results.at(place + "/value");
        assertTrue(value.isNumber(), place + " " + results.at(place));
        return value.asDouble();
    }

    /** 611.3 samples of 48000 a second. */
    @Test
    void theLoopIsWhatTheInterfaceIs() {
        assertEquals(611.3 / 48, value(loop, "/interface/delay"), 0.02);
        assertEquals(0, value(loop, "/timing/recordingClockError"), 0.2);
        assertEquals(-18, loop.at("/interface/channels/0/referenceReturnDbfs").asDouble(), 0.01);
        // −80 dBFS is −62 dB re a reference of −18 dBFS, 0.3 dB less up to 22.4 kHz
        assertEquals(-62.3, value(loop, "/interface/channels/0/unweighted"), 0.3);
        JsonNode steps = loop.at("/interface/channels/0/ladders/0/steps");
        assertEquals(0, steps.get(2).get("recordLevelDb").asDouble(), 0);
        assertEquals(0.02, steps.get(2).get("k3AtMostPercent").asDouble(), 0.002);
        assertEquals(0, loop.get("dropouts").size());
        assertFalse(loop.at("/channels/azimuth/reason").asText().isEmpty());
        assertFalse(loop.has("interfaceShare"));
    }

    @Test
    void theDelayOfTheHeadsIsTheMeanLag() {
        double head = truth.at("/timing/headDelayMs").asDouble();
        assertEquals(head, value(without, "/timing/headDelay"), 0.05);
        assertTrue(
                Math.abs(value(without, "/timing/headDelay") - head)
                        < without.at("/timing/headDelay/uncertainty").asDouble());
        assertEquals(30, value(without, "/timing/headSpacing"), 0.31);
        assertTrue(direct.at("/timing/headDelay/value").isNull());
    }

    @Test
    void theResponseIsThatOfTheMachineAlone() {
        for (int r = 0; r < 2; r++) {
            JsonNode own = without.at("/response/" + r);
            JsonNode machine = direct.at("/response/" + r);
            int compared = 0;
            for (int i = 0, j = 0; i < own.get("frequencyHz").size(); i++) {
                double hz = own.get("frequencyHz").get(i).asDouble();
                while (machine.get("frequencyHz").get(j).asDouble() < 0.999 * hz) {
                    j++;
                }
                if (hz > 40 && hz < 16_000) {
                    double db = machine.get("magnitudeDb").get(j).asDouble();
                    assertEquals(db, own.get("magnitudeDb").get(i).asDouble(), 0.1, hz + " Hz");
                    compared++;
                }
            }
            assertTrue(compared > 200);
            assertEquals(
                    machine.at("/lowerEdge/value").asDouble(),
                    own.at("/lowerEdge/value").asDouble(),
                    0.4);
        }
    }

    /** Hiss of −60 dB and the interface's of −62: nearly 40 % of what is heard is the latter's. */
    @Test
    void theNoiseIsThatOfTheMachineAlone() {
        for (String figure : new String[] {"unweighted", "aWeighted"}) {
            String place = "/noise/0/" + figure;
            assertEquals(value(direct, place), value(without, place), 0.3, figure);
        }
        // the truth of the return holds the interface's: 10·log(1 + 10^−0.2) = 2.1 dB more
        double both = truth.at("/noise/0/unweighted").asDouble();
        assertEquals(2.1, both - value(without, "/noise/0/unweighted"), 0.4);
    }

    @Test
    void distortionStaysAndItsDoubtHoldsTheInterfaces() {
        JsonNode step = without.at("/distortion/0/steps/2");
        double own = loop.at("/interface/channels/0/ladders/0/steps/2/k3AtMostPercent").asDouble();
        assertTrue(step.get("k3UncertaintyPercent").asDouble() >= own);
        assertTrue(step.get("limitedByInterface").asBoolean());
    }

    @Test
    void theSessionSaysWhatWasTakenOut() throws IOException {
        assertEquals(
                loop.at("/session/recordingSha256"),
                without.at("/session/loopback/recordingSha256"));
        Set<String> codes = new HashSet<>();
        without.get("health").forEach(n -> codes.add(n.get("code").asText()));
        assertTrue(codes.contains("loopback-used"), codes.toString());
        assertFalse(codes.contains("interface-gain-changed"), codes.toString());
        String page = Files.readString(lab.path("without/report.html"));
        assertTrue(page.contains("How much of this is the interface"));
        String own = Files.readString(lab.path("loop/report.html"));
        assertFalse(own.contains("hiss of silent tape"));
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of(
                        "no session",
                        3,
                        "{lab}/nowhere holds no results.json. Give the folder that \"offtape"
                                + " measure\" wrote for the loopback.",
                        l -> with("nowhere")),
                of(
                        "a loopback less a loopback",
                        2,
                        "A loopback is itself the interface: there is nothing to take out of it."
                                + " Leave out --loopback, or name the mode of a machine. See"
                                + " \"offtape measure --help\".",
                        l ->
                                Lab.line(
                                        l.measure(through),
                                        "--mode",
                                        "loopback",
                                        "--loopback",
                                        l.path("loop"))),
                of(
                        "no JSON",
                        3,
                        "{lab}/torn/results.json: this is not well-formed JSON (line 1, column 2).",
                        l -> with(put("torn", "{]"))),
                of(
                        "another kind of file",
                        3,
                        "{lab}/kind/results.json is not the results of a session. Give the folder"
                                + " that \"offtape measure\" wrote for the loopback.",
                        l -> with(put("kind", "{\"format\":\"offtape-machine\",\"version\":1}"))),
                of(
                        "a later version",
                        3,
                        "{lab}/later/results.json is of version 9, which is not known to this"
                                + " release; it reads version 1.",
                        l -> with(changed("later", r -> r.put("version", 9)))),
                of(
                        "a machine",
                        3,
                        "{lab}/without/results.json is a session of the mode off-tape, not of the"
                                + " mode loopback, and so holds a machine. Connect the interface's"
                                + " outputs to its inputs, record the programme and measure that with"
                                + " --mode loopback.",
                        l -> with("without")),
                of(
                        "without figures",
                        3,
                        "{lab}/bare/results.json does not hold what is needed of the interface."
                                + " Connect the interface's outputs to its inputs, record the"
                                + " programme and measure that with --mode loopback.",
                        l -> with(changed("bare", r -> r.remove("interface")))),
                of(
                        "a curve that falls back",
                        3,
                        "{lab}/curve/results.json: interface.channels[0].response: a figure of"
                                + " the interface is missing or impossible. Make the loopback again.",
                        l -> with(changed("curve", LoopbackTest::foldCurve))),
                of(
                        "another rate",
                        3,
                        "The loopback {lab}/rate/results.json was recorded at 44100 frames a second"
                                + " and this return at 48000, at which the interface is another one."
                                + " Make a loopback at the same rate.",
                        l ->
                                with(
                                        changed(
                                                "rate",
                                                r ->
                                                        ((ObjectNode) r.get("session"))
                                                                .put(
                                                                        "recordingSampleRate",
                                                                        44_100)))),
                of(
                        "another programme",
                        3,
                        "The loopback {lab}/other/results.json was made with another programme than"
                                + " this return. Make a loopback with the same programme.",
                        l ->
                                with(
                                        changed(
                                                "other",
                                                r ->
                                                        ((ObjectNode) r.get("session"))
                                                                .put(
                                                                        "programmeSha256",
                                                                        "0".repeat(64))))),
                of(
                        "a dead channel",
                        3,
                        "In the loopback {lab}/dead/results.json the right channel is dead or"
                                + " missing. Check its cable and make the loopback again with all"
                                + " channels that are used.",
                        l ->
                                with(
                                        changed(
                                                "dead",
                                                r ->
                                                        ((ArrayNode) r.at("/interface/channels"))
                                                                .remove(1)))));
    }

    /** Sets a frequency of the curve back to the one before. */
    private static void foldCurve(ObjectNode results) {
        var hz = (ArrayNode) results.at("/interface/channels/0/response/frequencyHz");
        hz.set(5, hz.get(4));
    }

    private static Object[] with(String session) {
        return Lab.line(
                lab.measure(through), "--mode", "off-tape", "--loopback", lab.path(session));
    }

    private static String put(String name, String content) {
        lab.file(name + "/results.json", content);
        return name;
    }

    private static String changed(String name, Consumer<ObjectNode> change) {
        ObjectNode copy = loop.deepCopy();
        change.accept(copy);
        return put(name, copy.toString());
    }
}
