package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A capture in a process that the system tells to end; Ctrl-C takes the same way. */
@Timeout(60)
class InterruptedCaptureTest {

    @TempDir private Path folder;

    /** Where there are no signals a process is ended without being told. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whatWasRecordedIsKept() throws IOException, InterruptedException {
        CaptureBench bench = new CaptureBench(folder);
        Path err = folder.resolve("stderr");
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                EndlessCapture.class.getName(),
                                "capture",
                                "--programme",
                                bench.path("programme").toString(),
                                "--out",
                                bench.path("return.wav").toString())
                        .redirectError(err.toFile())
                        .start();
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            assertEquals("recorded", out.readLine());
        }
        process.destroy();
        // 128 and the number of the signal that asks a process to end, 15 (POSIX)
        assertEquals(143, process.waitFor());
        Path kept = folder.toRealPath().resolve("return.incomplete.wav");
        String said = Files.readString(err, StandardCharsets.UTF_8);
        assertTrue(said.contains("Broken off; what was recorded is kept in " + kept + ".\n"), said);
        assertEquals(CaptureBench.RATE, bench.frames("return.incomplete.wav"));
        assertEquals(Set.of("programme", "stderr", "return.incomplete.wav"), bench.names());
    }
}
