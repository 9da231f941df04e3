package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits on the command line: measured all the same, and told by the exit code where asked for. */
class LimitsTest {

    @TempDir private Path folder;

    @Test
    void aFailedLimitIsToldByTheExitCodeOnlyIfAskedFor() {
        Lab lab = new Lab(folder);
        Path form = folder.resolve("limits.json");
        Tool.Outcome written = Tool.run("prepare", "--limits-template", form);
        assertEquals(0, written.code(), written.err());
        assertTrue(written.err().contains("--limits"), written.err());
        Path costs = folder.resolve("costs.json");
        Tool.Outcome money = Tool.run("prepare", "--economics-template", costs);
        assertEquals(0, money.code(), money.err());
        assertTrue(money.err().contains("--economics"), money.err());
        Path programme = lab.programme().resolve("programme.wav");
        Object[] line =
                Lab.line(lab.measure(programme), "--mode", "reference-tape", "--limits", form);
        Tool.Outcome met = Tool.run(Lab.line(line, "--economics", costs, "--fail-on-limit"));
        assertEquals(0, met.code(), met.err());
        assertTrue(met.err().contains("limits are met beyond doubt"), met.err());
        assertEquals(1, met.err().lines().filter(l -> l.startsWith("Decision: ")).count());
        Path strict = folder.resolve("strict.json");
        lab.file(
                "strict.json",
                "{\"format\": \"offtape-limits\", \"version\": 1, \"name\": \"strict\","
                        + " \"source\": \"invented\", \"limits\": [{\"quantity\": \"balance\","
                        + " \"least\": 3}]}");
        Object[] failing =
                Lab.line(lab.measure(programme), "--mode", "reference-tape", "--limits", strict);
        Tool.Outcome told = Tool.run(Lab.line(failing, "--fail-on-limit"));
        assertEquals(1, told.code(), told.err());
        assertTrue(told.err().contains("Limit fail: Balance"), told.err());
        assertTrue(Files.exists(lab.path("session/report.html")), "measured all the same");
        assertEquals(2, Tool.run(Lab.line(lab.measure(programme), "--fail-on-limit")).code());
        Tool.Outcome none =
                Tool.run(Lab.line(lab.measure(programme), "--limits", folder.resolve("x")));
        assertEquals(3, none.code());
    }
}
