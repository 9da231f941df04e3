package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.cli.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a process of its own: exit code, streams, one thread, another country. */
class ProcessTest {

    private static final String NAME = "TITLE title 3.5";

    @TempDir private Path folder;

    private Tool.Outcome offtape(Object... args) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        line.add("-XX:ActiveProcessorCount=1");
        // Turkish has other small and capital letters, and here Arabic digits and a comma as well
        line.add("-Duser.language=tr");
        line.add("-Duser.country=TR");
        line.add("-Duser.extensions=u-nu-arab");
        line.add("-Duser.timezone=Asia/Kathmandu");
        line.add("-Dfile.encoding=ISO-8859-1");
        line.add("-cp");
        line.add(System.getProperty("java.class.path"));
        line.add(Main.class.getName());
        for (Object arg : args) {
            line.add(arg.toString());
        }
        Path out = folder.resolve("stdout");
        Path err = folder.resolve("stderr");
        Process process =
                new ProcessBuilder(line)
                        .directory(folder.toFile())
                        .redirectOutput(out.toFile())
                        .redirectError(err.toFile())
                        .start();
        int code = process.waitFor();
        return new Tool.Outcome(code, text(out), text(err));
    }

    private static String text(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8);
    }

    @Test
    void oneThreadInAnotherCountryGivesTheSameBytes() throws Exception {
        Lab lab = new Lab(folder);
        Path recording = lab.programme().resolve("programme.wav");
        Tool.Outcome here =
                Tool.run(Lab.line(lab.measure(recording), "--json", "--machine-name", NAME));
        // relative paths, from the folder the process runs in
        Tool.Outcome there =
                offtape(
                        "measure",
                        Path.of("programme", "programme.wav"),
                        "--programme",
                        "programme",
                        "--out",
                        "other",
                        "--json",
                        "--machine-name",
                        NAME);
        assertEquals(0, there.code(), there.err());
        assertEquals(here.out(), there.out());
        for (String name : lab.namesIn("session")) {
            assertArrayEquals(
                    lab.bytes(lab.path("session/" + name)),
                    lab.bytes(lab.path("other/" + name)),
                    name);
        }
        String expected = here.err().replace(lab.path("session").toString(), "other");
        assertEquals(expected, there.err());
    }

    @Test
    void endsWithTheExitCodeAndASentence() throws Exception {
        Tool.Outcome outcome = offtape("speed", "gone.wav");
        assertEquals(3, outcome.code());
        assertEquals("", outcome.out());
        assertEquals(
                "offtape: There is no file gone.wav. Check the name and the folder.\n",
                outcome.err());
    }
}
