package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Disks that take nothing: full, or read-only, on which no rights help. Skipped where no small disk
 * can be put in place for it.
 */
class DiskRefusalTest {

    private static final String IS_FULL =
            " cannot be written: the disk is full; make room or choose another disk.";
    private static final String IS_READ_ONLY =
            " cannot be written: the disk is read-only; choose another one.";

    @TempDir private static Path folder;

    private static SmallDisk disk;

    @BeforeAll
    static void aDisk() throws IOException {
        disk = SmallDisk.at(Files.createDirectory(folder.toRealPath().resolve("disk")));
    }

    @AfterAll
    static void takeAway() {
        if (disk != null) {
            disk.close();
        }
    }

    @Test
    void programmeDoesNotFit() throws IOException {
        disk.writable();
        Path out = disk.path("programme");
        refused(out.resolve("programme.wav") + IS_FULL, "prepare", "--short", "--out", out);
    }

    @Test
    void smallFileDoesNotFit() throws IOException {
        disk.writable();
        disk.fill();
        Path out = disk.path("limits.json");
        refused(out + IS_FULL, "prepare", "--limits-template", out);
        assertFalse(SettingsFile.at(disk.path("s.json")).write(SoundSettings.NONE), "settings");
        assertEquals(Set.of(SmallDisk.FILLING), names());
    }

    @Test
    void readOnlyDiskIsTold() throws IOException {
        disk.writable();
        disk.readOnly();
        Path folder = disk.path("programme");
        refused(folder + IS_READ_ONLY, "prepare", "--short", "--out", folder);
        Path deep = disk.path("a/b/limits.json");
        refused(deep + IS_READ_ONLY, "prepare", "--limits-template", deep);
        refused(
                disk.path("") + " is write-protected. Change its rights or choose another --out.",
                "prepare",
                "--short",
                "--out",
                disk.path(""));
        assertFalse(SettingsFile.at(disk.path("s.json")).write(SoundSettings.NONE), "settings");
    }

    /** The disk holds afterwards what it held before. */
    private static void refused(String sentence, Object... line) throws IOException {
        Set<String> before = names();
        Tool.Outcome outcome = Tool.run(line);
        assertEquals("offtape: " + sentence, outcome.err().strip());
        assertEquals(2, outcome.code());
        assertEquals(before, names());
    }

    private static Set<String> names() throws IOException {
        try (Stream<Path> all = Files.list(disk.path(""))) {
            return all.map(p -> p.getFileName().toString()).collect(Collectors.toSet());
        }
    }
}
