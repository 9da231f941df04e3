package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reading a calibration tape from the command line. */
class TonesCommandTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static Path tape;
    private static double[] sound;

    /** 1 kHz, 8 kHz and 125 Hz, −20 dBFS, 2 s each with gaps of half a second, 2 % fast. */
    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        sound =
                Stream.of(1020.0, 8160.0, 127.5)
                        .flatMapToDouble(
                                hz ->
                                        DoubleStream.concat(
                                                Arrays.stream(Lab.tone(hz, 0.1, 2)),
                                                Arrays.stream(new double[Mini.RATE / 2])))
                        .toArray();
        double[] right = sound.clone();
        Arrays.setAll(right, i -> 0.5 * sound[i]);
        tape = lab.wav("tape.wav", sound, right);
    }

    @Test
    void figuresGoToStandardOutputAndKeepTheSchema() throws IOException {
        Tool.Outcome o = Tool.run("tones", tape, "--json", "--equalisation", "none,70");
        assertEquals(0, o.code(), o.err());
        assertEquals("", o.err());
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
        assertEquals(
                Set.of(),
                factory.getSchema(Schemas.toneReadings()).validate(o.out(), InputFormat.JSON));
        JsonNode r = new ObjectMapper().readTree(o.out());
        assertEquals(3, r.get("tones").size());
        assertEquals(2, r.at("/speedDeviation/value").asDouble(), 0.001);
        // 20·lg 0.5
        assertEquals(-6.0206, r.at("/channelDifference/value").asDouble(), 0.002);
        assertEquals(-20, r.at("/tones/0/levels/0/level/value").asDouble(), 0.002);
        assertEquals("none,70", r.get("tapeEqualisation").asText());
    }

    @Test
    void wordsGiveATableAndTheResponse() {
        Tool.Outcome o = Tool.run("tones", tape);
        assertEquals(0, o.code(), o.err());
        assertTrue(o.out().contains("Speed deviation        +2.000 ± 0.005 %"), o.out());
        assertTrue(o.out().contains("3 of 3 tones: the octave series of ISO 266"), o.out());
        assertTrue(o.out().contains("Response re tone 1 (1000 Hz), dB"), o.out());
    }

    @Test
    void theFolderHoldsReportAndTables() throws IOException {
        Path out = lab.path("reading");
        Tool.Outcome o =
                Tool.run(
                        "tones",
                        tape,
                        "--out",
                        out,
                        "--equalisation",
                        "none,70",
                        "--machine-equalisation",
                        "3180,50");
        assertEquals(0, o.code(), o.err());
        for (String name : List.of("tones.json", "tones.csv", "tones-response.csv")) {
            assertTrue(Files.size(out.resolve(name)) > 200, name);
        }
        String page = Files.readString(out.resolve("tones.html"));
        assertTrue(page.contains("Left corrected"), "chart");
        assertFalse(page.contains(" src=") || page.contains("href=\"http"), "loads something");
        assertEquals(6 + 1, Files.readAllLines(out.resolve("tones.csv")).size());
    }

    @Test
    void theFormIsWrittenOnceAndFits() {
        Path form = lab.path("my-tape.json");
        assertEquals(0, Tool.run("tones", "--list-template", form).code());
        assertEquals(2, Tool.run("tones", "--list-template", form).code());
        Tool.Outcome o = Tool.run("tones", tape, "--tones", form);
        assertEquals(0, o.code(), o.err());
        assertTrue(o.out().contains("my tape"), o.out());
        assertTrue(o.out().contains("Not found of the list:"), o.out());
    }

    @Test
    void oneOfSixChannels() {
        double[] hiss = Lab.noise(4, 0.01, (double) sound.length / Mini.RATE);
        Path six = lab.wav("six.wav", hiss, hiss, sound, hiss, hiss, hiss);
        Tool.Outcome o = Tool.run("tones", six, "--channels", "3");
        assertEquals(0, o.code(), o.err());
        assertTrue(o.out().contains("one channel only, which is reported as left"), o.out());
        Tool.Outcome unsaid = Tool.run("tones", six);
        assertEquals(3, unsaid.code());
        assertTrue(unsaid.err().contains("six.wav has 6 channels; the first two"), unsaid.err());
    }

    @Test
    void badInputsGetASentence() {
        Path noise = lab.wav("noise.wav", Lab.noise(1, 0.1, 4));
        Path list = lab.file("list.json", "{\"format\": \"offtape-tones\", \"version\": 1}");
        String help = " See \"offtape tones --help\".";
        for (Lab.Case c :
                List.of(
                        Lab.Case.of(
                                "noise",
                                3,
                                "No steady tone of 1.2 s or more between 30 Hz and 20 kHz was found"
                                        + " in noise.wav. Speech, music and noise are passed over;"
                                        + " record the tape's tones themselves, without processing.",
                                l -> Lab.line("tones", noise)),
                        Lab.Case.of(
                                "no list",
                                3,
                                list + ": \"tones\" must hold one tone or more.",
                                l -> Lab.line("tones", tape, "--tones", list)),
                        Lab.Case.of(
                                "no such speed tone",
                                3,
                                "No tone within 25 % of 3150 Hz was found in tape.wav. Heard were"
                                        + " 1020 Hz, 8160 Hz, 127.5 Hz.",
                                l -> Lab.line("tones", tape, "--speed-tone", 3150)),
                        Lab.Case.of(
                                "no constants",
                                2,
                                "Invalid value for option '--equalisation': \"flat\" is no pair of"
                                        + " time constants; write 3180,50 or none,70, for instance."
                                        + help,
                                l -> Lab.line("tones", tape, "--equalisation", "flat")),
                        Lab.Case.of(
                                "no file",
                                2,
                                "Missing required parameter: 'FILE'." + help,
                                l -> Lab.line("tones")))) {
            lab.check(c);
        }
    }
}
