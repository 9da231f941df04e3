package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file through the model of a small session. */
class PreviewCommandTest {

    private static final String MACHINE =
            "{\"format\":\"offtape-machine\",\"version\":1,\"saturation\":"
                    + "{\"levelAtK3ThreePercentDb\":6},\"electronics\":{\"upperEdgeHz\":15000},"
                    + "\"hiss\":{\"levelDb\":-55}}";

    @TempDir private static Path folder;

    private static Path session;
    private static Path machine;

    @BeforeAll
    static void aSession() throws IOException {
        Path programme = Mini.write(folder.resolve("programme"));
        machine = Files.writeString(folder.resolve("machine.json"), MACHINE);
        Path wav = folder.resolve("return.wav");
        session = folder.resolve("session");
        Object[] simulate = {
            "simulate", "--programme", programme, "--machine", machine, "--out", wav
        };
        assertEquals(0, Tool.run(simulate).code());
        Object[] measure = {"measure", wav, "--programme", programme, "--out", session, "--quiet"};
        assertEquals(0, Tool.run(measure).code());
    }

    private static Path sound(String name, int channels, double peak) {
        double[][] x = new double[channels][30_000];
        for (double[] channel : x) {
            for (int i = 0; i < channel.length; i++) {
                channel[i] = peak * Math.sin(0.13 * i) * Math.sin(1e-4 * i);
            }
        }
        Path file = folder.resolve(name);
        try (WavWriter wav =
                WavWriter.create(file, new WavFormat(44_100, channels, WavEncoding.PCM_24))) {
            wav.write(x);
        }
        return file;
    }

    private static double[][] read(Path file) {
        try (AudioFile sound = AudioFiles.open(file)) {
            return sound.read(0, (int) sound.frames());
        }
    }

    /** As long as the file, the same twice, figures alone on standard output. */
    @Test
    void passesAFileThrough() throws IOException {
        Path in = sound("in.wav", 2, 0.5);
        Path one = folder.resolve("one.wav");
        Path two = folder.resolve("two.wav");
        Tool.Outcome o = Tool.run("preview", "--session", session, in, "--out", one, "--json");
        assertEquals(0, o.code(), o.err());
        JsonNode told = new ObjectMapper().readTree(o.out());
        assertTrue(told.get("k3AtPeakPercent").asDouble() > 1);
        assertEquals("pcm-24", told.get("encoding").asText());
        assertTrue(o.err().contains("0 samples, 0 ms of offset"), o.err());
        assertEquals(
                0, Tool.run("preview", "--session", session, in, "--out", two, "--quiet").code());
        assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
        assertEquals(30_000, read(one)[0].length);
        assertEquals(2, read(one).length);
    }

    /** With all parts left out nothing changes but the rounding to 24 bits. */
    @Test
    void changesNothingWithoutAnyPart() {
        Path in = sound("same.wav", 1, 0.4);
        Path out = folder.resolve("same-out.wav");
        String all = "response,crosstalk,saturation,noise,motion";
        Tool.Outcome o =
                Tool.run("preview", "--session", session, in, "--out", out, "--without", all);
        assertEquals(0, o.code(), o.err());
        assertEquals(1, read(out).length);
        assertArrayEquals(read(in)[0], read(out)[0], 3e-7);
    }

    @Test
    void writesAModelThatKeepsItsSchema() throws IOException {
        Path out = folder.resolve("model");
        Tool.Outcome o = Tool.run("preview", "--session", session, "--model", out);
        assertEquals(0, o.code(), o.err());
        String text = Files.readString(out.resolve("model.json"));
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
        assertEquals(Set.of(), factory.getSchema(Schemas.model()).validate(text, InputFormat.JSON));
        assertEquals(2, read(out.resolve("response.wav")).length);
    }

    @Test
    void printsTheNullPartByPart() {
        Path in = sound("null.wav", 2, 0.2);
        Tool.Outcome o = Tool.run("preview", "--session", session, in, "--verify", machine);
        assertEquals(0, o.code(), o.err());
        assertTrue(o.out().contains("dB  response + saturation"), o.out());
    }

    @Test
    void refusesWhatItCannotUse() {
        Path three = sound("three.wav", 3, 0.1);
        Path out = folder.resolve("never.wav");
        Tool.Outcome many = Tool.run("preview", "--session", session, three, "--out", out);
        assertEquals(3, many.code());
        assertTrue(many.err().contains("Export it as mono or stereo"), many.err());
        assertEquals(3, Tool.run("preview", "--session", folder, three, "--out", out).code());
        assertEquals(2, Tool.run("preview", "--session", session, three).code());
        Tool.Outcome transport =
                Tool.run(
                        "preview",
                        "--session",
                        session,
                        sound("t.wav", 1, 0.1),
                        "--out",
                        out,
                        "--motion",
                        "transport");
        assertEquals(3, transport.code());
        assertTrue(transport.err().contains("mode off-tape"), transport.err());
    }

    @Test
    void bearsSilenceAndAShortFile() {
        Path in = sound("silent.wav", 2, 0);
        Path out = folder.resolve("silent-out.wav");
        Tool.Outcome o = Tool.run("preview", "--session", session, in, "--out", out);
        assertEquals(0, o.code(), o.err());
        assertEquals(30_000, read(out)[0].length);
    }

    /** A path that changes nothing gives the file back, but for where it breaks off at the end. */
    @Test
    void passesALoopbackUnchanged() {
        Path programme = folder.resolve("programme");
        Path loop = folder.resolve("loop");
        Object[] measure = {
            "measure",
            programme.resolve("programme.wav"),
            "--programme",
            programme,
            "--out",
            loop,
            "--mode",
            "loopback",
            "--quiet"
        };
        assertEquals(0, Tool.run(measure).code());
        Path in = sound("loop-in.wav", 2, 0.5);
        Path out = folder.resolve("loop-out.wav");
        Tool.Outcome o = Tool.run("preview", "--session", loop, in, "--out", out);
        assertEquals(0, o.code(), o.err());
        assertTrue(o.err().contains("the interface, not a machine"), o.err());
        assertArrayEquals(
                Arrays.copyOf(read(in)[1], 29_900), Arrays.copyOf(read(out)[1], 29_900), 5e-4);
    }

    /** A session of an earlier release lacks phases, spectra and the reference level. */
    @Test
    void bearsASessionWithoutPhases() throws IOException {
        ObjectMapper json = new ObjectMapper();
        ObjectNode results = (ObjectNode) json.readTree(session.resolve("results.json").toFile());
        for (String key :
                List.of("phaseDegrees", "phaseUncertaintyDegrees", "phaseDifference", "spectrum")) {
            results.findParents(key).forEach(n -> ((ObjectNode) n).remove(key));
        }
        ((ObjectNode) results.get("session")).remove("referenceDbfs");
        Path old = Files.createDirectories(folder.resolve("old"));
        json.writeValue(old.resolve("results.json").toFile(), results);
        Path in = sound("old-in.wav", 2, 0.3);
        Path out = folder.resolve("old-out.wav");
        Tool.Outcome o = Tool.run("preview", "--session", old, in, "--out", out);
        assertEquals(0, o.code(), o.err());
        assertTrue(o.err().contains("phase of the highs is a guess"), o.err());
        assertTrue(o.err().contains("tells no noise spectrum"), o.err());
        assertTrue(o.err().contains("−18 dBFS is taken"), o.err());
        assertEquals(30_000, read(out)[0].length);
    }

    /** Each step is a line of its own where there is no terminal: a few, however long the file. */
    @Test
    void tellsProgressInFewLines() throws IOException {
        Path in = sound("progress.wav", 2, 0.1);
        Path out = folder.resolve("progress-out.wav");
        Tool.Outcome o = Tool.run("preview", "--session", session, in, "--out", out);
        long lines = o.err().lines().filter(l -> l.contains("Passing the file")).count();
        assertTrue(lines >= 1 && lines <= 4, o.err());
    }
}
