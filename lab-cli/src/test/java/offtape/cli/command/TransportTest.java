package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The dimensions of a transport: the form, and lines that get the names of parts. */
class TransportTest {

    private static final String CAPSTAN =
            "{\"format\": \"offtape-transport\", \"version\": 1, \"capstan\": {\"diameterMm\": 6.35}"
                    + "%s}";

    @TempDir private static Path folder;

    private static Lab lab;
    private static Path tone;

    /** 3150 Hz, modulated at 190.5/(π·6.35) = 9.549 Hz by 0.1 % peak for 12 s. */
    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        double rate = 190.5 / (Math.PI * 6.35);
        double[] x = new double[12 * Mini.RATE];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / Mini.RATE;
            double turned = t - 0.001 / (2 * Math.PI * rate) * Math.cos(2 * Math.PI * rate * t);
            x[i] = 0.25 * Math.sin(2 * Math.PI * 3150 * turned);
        }
        tone = lab.wav("tone.wav", x, x);
    }

    private static JsonNode line(Object... more) throws IOException {
        Tool.Outcome o = Tool.run(Lab.line(Lab.line("speed", tone, "--json"), more));
        assertEquals(0, o.code(), o.err());
        return new ObjectMapper().readTree(o.out()).get("components").get(0);
    }

    @Test
    void theFormIsWrittenOnceAndReadBack() throws IOException {
        Path form = lab.path("form.json");
        Tool.Outcome first = Tool.run("prepare", "--transport-template", form);
        assertEquals(0, first.code(), first.err());
        assertTrue(Files.readString(form).contains("\"pinchRoller\""));
        assertTrue(first.err().contains("Unplug the machine"), first.err());
        Tool.Outcome second = Tool.run("prepare", "--transport-template", form);
        assertEquals(2, second.code());
        assertTrue(second.err().contains("form.json exists already."), second.err());
        assertEquals(0, Tool.run("prepare", "--transport-template", form, "--force").code());
        assertTrue(line("--transport", form, "--tape-speed", "19.05cm/s").get("part").isNull());
    }

    @Test
    void withoutDimensionsThePartIsNull() throws IOException {
        JsonNode line = line();
        assertTrue(line.has("part"));
        assertTrue(line.get("part").isNull());
        assertEquals(9.549, line.get("frequencyHz").asDouble(), 0.002);
        assertEquals(0.1, line.get("peakPercent").asDouble(), 0.001);
        assertTrue(line.get("frequencyUncertaintyHz").asDouble() > 0);
        assertTrue(line.get("peakUncertaintyPercent").asDouble() > 0);
        assertFalse(line.has("endFrequencyHz"));
    }

    @Test
    void theLineIsNamedAtTheSpeedOfFileOrOption() throws IOException {
        Path own = lab.file("own.json", CAPSTAN.formatted(", \"tapeSpeedMmPerS\": 190.5"));
        assertEquals("capstan", line("--transport", own).get("part").asText());
        Path bare = lab.file("bare.json", CAPSTAN.formatted(""));
        JsonNode line = line("--transport", bare, "--tape-speed", "7.5ips");
        assertEquals("capstan", line.get("part").asText());
        Tool.Outcome words = Tool.run("speed", tone, "--transport", own);
        assertTrue(words.out().contains("peak: capstan"), words.out());
    }

    @Test
    void withoutATapeSpeedItIsSaidThatNothingThatTurnsIsNamed() {
        Path bare = lab.file("slow.json", CAPSTAN.formatted(""));
        Tool.Outcome o = Tool.run("speed", tone, "--transport", bare);
        assertEquals(0, o.code());
        assertTrue(o.err().startsWith("The tape speed is not known, so no part"), o.err());
    }

    @Test
    void aFileThatIsNoneIsRefusedBeforeAnythingIsMeasured() {
        Path machine = lab.file("machine.json", "{\"format\": \"offtape-machine\"}");
        for (Object[] line :
                new Object[][] {Lab.line("speed", tone), lab.measure(lab.path("none.wav"))}) {
            Tool.Outcome o = Tool.run(Lab.line(line, "--transport", machine));
            assertEquals(3, o.code());
            assertTrue(
                    o.err()
                            .contains(
                                    "machine.json: \"format\" must be \"offtape-transport\": this is"
                                            + " no description of a transport."),
                    o.err());
        }
    }
}
