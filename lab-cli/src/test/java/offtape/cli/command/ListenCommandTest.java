package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
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
import java.util.Set;
import offtape.core.music.MadeUpMusic;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code listen} as a user meets it. */
class ListenCommandTest {

    private static final int RATE = 48_000;
    private static final int LATE = 4321;

    @TempDir private static Path folder;

    private static Path a;
    private static Path late;

    @BeforeAll
    static void twoFiles() throws IOException {
        double[][] music = MadeUpMusic.of(MadeUpMusic.Kind.MIX, RATE, 4, 5).read(0, 4 * RATE);
        a = Files.write(folder.resolve("a.wav"), Wav.PCM_24.of(RATE, music));
        double[][] moved = new double[2][music[0].length + LATE];
        for (int c = 0; c < 2; c++) {
            double[] to = moved[c];
            System.arraycopy(music[c], 0, to, LATE, music[c].length);
            Arrays.setAll(to, i -> -0.5 * to[i]);
        }
        late = Files.write(folder.resolve("late.wav"), Wav.PCM_24.of(RATE, moved));
    }

    private static Path out(String name) {
        return folder.resolve(name);
    }

    /** Half the amplitude is −6.0206 dB; B came 4321 frames late and inverted. */
    @Test
    void aPageIsWrittenAndTheFiguresArePrinted() throws IOException {
        Tool.Outcome done =
                Tool.run("listen", a, late, "--out", out("page.html"), "--json", "--length", 2);
        assertEquals(0, done.code(), done.err());
        JsonNode facts = new ObjectMapper().readTree(done.out());
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.listen())
                        .validate(done.out(), InputFormat.JSON));
        assertEquals(-6.0206, facts.at("/a/gainDb").asDouble(), 0.001);
        assertEquals(0, facts.at("/b/gainDb").asDouble());
        assertEquals(LATE, facts.at("/time/delayFrames").asDouble(), 0.01);
        assertEquals("inverted", facts.at("/time/polarity").asText());
        assertEquals("dip", facts.get("switching").asText());
        assertTrue(done.err().contains("4321.00 samples (90.021 ms) late"), done.err());
        assertTrue(done.err().contains("Next: open it in a browser"), done.err());
        assertTrue(Files.size(out("page.html")) > 2 * 8 * 2 * RATE);
    }

    @Test
    void theSameInputGivesTheSameBytesAndQuietSaysNothing() throws IOException {
        for (String name : new String[] {"one.html", "two.html"}) {
            Tool.Outcome done =
                    Tool.run("listen", a, a, "--as-they-are", "--quiet", "--out", out(name));
            assertEquals(new Tool.Outcome(0, "", ""), done);
        }
        assertArrayEquals(Files.readAllBytes(out("one.html")), Files.readAllBytes(out("two.html")));
    }

    @Test
    void aFileInTheWayIsLeftAlone() throws IOException {
        Path page = Files.writeString(out("mine.html"), "mine");
        Tool.Outcome refused = Tool.run("listen", a, a, "--as-they-are", "--out", page);
        assertEquals(2, refused.code());
        assertTrue(refused.err().contains("--force"), refused.err());
        assertEquals("mine", Files.readString(page));
        assertEquals(
                0,
                Tool.run("listen", a, a, "--as-they-are", "--quiet", "--out", page, "--force")
                        .code());
        assertTrue(Files.size(page) > 1000);
    }

    @Test
    void soundsThatHaveNothingInCommonAreRefusedWithTheWayOut() throws IOException {
        double[][] noise = {Lab.noise(7, 0.1, 4), Lab.noise(8, 0.1, 4)};
        Path other = Files.write(out("noise.wav"), Wav.PCM_24.of(RATE, noise));
        Tool.Outcome refused = Tool.run("listen", a, other, "--out", out("never.html"));
        assertEquals(3, refused.code());
        assertTrue(refused.err().contains("--as-they-are"), refused.err());
        assertFalse(Files.exists(out("never.html")));
        Tool.Outcome done =
                Tool.run("listen", a, other, "--as-they-are", "--out", out("noise.html"));
        assertEquals(0, done.code(), done.err());
        assertTrue(done.err().contains("too unlike"), done.err());
    }

    @Test
    void wrongUsageIsTold() {
        usage("--trials must lie between 5 and 100", "--trials", 4);
        usage("--trials must lie between 5 and 100", "--trials", 101);
        usage("--length must lie between 0.4 and 120", "--length", 0.3);
        usage("--length must lie between 0.4 and 120", "--length", "NaN");
        usage("--from must not be negative", "--from", -1);
        usage("--turn-polarity needs", "--as-they-are", "--turn-polarity");
    }

    private static void usage(String words, Object... options) {
        Object[] args = new Object[5 + options.length];
        System.arraycopy(new Object[] {"listen", a, a, "--out", out("x.html")}, 0, args, 0, 5);
        System.arraycopy(options, 0, args, 5, options.length);
        Tool.Outcome refused = Tool.run(args);
        assertEquals(2, refused.code());
        assertTrue(refused.err().contains(words), refused.err());
        assertFalse(Files.exists(out("x.html")));
    }
}
