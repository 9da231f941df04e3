package offtape.cli.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Settings where each platform keeps them; a broken file is as none. */
class SettingsFileTest {

    @TempDir private Path folder;

    /** The XDG Base Directory Specification; the other two by common practice, no source. */
    @Test
    void eachPlatformHasItsPlace() {
        assertEquals(
                Path.of("/home/a/.config/offtape/settings.json"),
                SettingsPlace.of("Linux", "/home/a", Map.of()));
        assertEquals(
                Path.of("/etc/a/offtape/settings.json"),
                SettingsPlace.of("Linux", "/home/a", Map.of("XDG_CONFIG_HOME", "/etc/a")));
        assertEquals(
                Path.of("/home/a/.config/offtape/settings.json"),
                SettingsPlace.of("Linux", "/home/a", Map.of("XDG_CONFIG_HOME", "relative")));
        assertEquals(
                Path.of("/Users/a/Library/Application Support/Offtape/settings.json"),
                SettingsPlace.of("Mac OS X", "/Users/a", Map.of()));
        assertEquals(
                Path.of("/c/Roaming/Offtape/settings.json"),
                SettingsPlace.of("Windows 11", "/c/a", Map.of("APPDATA", "/c/Roaming")));
    }

    @Test
    void whatWasRememberedIsReadAgain() {
        SettingsFile file = SettingsFile.at(folder.resolve("deep/settings.json"));
        assertEquals(SoundSettings.NONE, file.read());
        SoundSettings settings = new SoundSettings("java", "A [hw:1]", "5,6", null, "1");
        assertTrue(file.write(settings));
        assertEquals(settings, file.read());
        assertTrue(file.write(SoundSettings.NONE));
        assertEquals(SoundSettings.NONE, file.read());
    }

    @Test
    void aFileThatCannotBeUsedIsAsNone() throws IOException {
        Path path = folder.resolve("settings.json");
        Files.writeString(path, "{\"layer\": 7");
        assertEquals(SoundSettings.NONE, SettingsFile.at(path).read());
        assertFalse(SettingsFile.at(path.resolve("below-a-file/s.json")).write(SoundSettings.NONE));
    }

    /** In the order of the record; a dash is nothing. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "j A 5,6 B 1 | - - - - -   | j A 5,6 B 1",
                "j A 5,6 B 1 | - - 3,4 - - | j A 3,4 B 1",
                "j A 5,6 B 1 | - A - C -   | j A 5,6 C -",
                "j A 5,6 B 1 | - C - - 2   | j C - B 2",
                "j A 5,6 B 1 | j - - - -   | j A 5,6 B 1",
                "j A 5,6 B 1 | p - - B -   | p - - B -",
                "- - - - -   | - A 1,2 - - | - A 1,2 - -",
            })
    void channelsOfAnotherDeviceAreNotTakenOver(String before, String named, String used) {
        assertEquals(settings(used), settings(before).changedBy(settings(named)));
    }

    private static SoundSettings settings(String words) {
        List<String> w = Stream.of(words.split(" ")).map(x -> x.equals("-") ? null : x).toList();
        return new SoundSettings(w.get(0), w.get(1), w.get(2), w.get(3), w.get(4));
    }

    /**
     * Rights as POSIX writes them; the XDG specification asks for 0700 of folders made on the way.
     */
    @Test
    void nobodyElseReadsThemAndNothingIsLeftBeside() throws IOException {
        assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
        Path path = folder.resolve("config/offtape/settings.json");
        assertTrue(SettingsFile.at(path).write(SoundSettings.NONE));
        assertEquals("rw-------", rights(path));
        assertEquals("rwx------", rights(path.getParent()));
        assertEquals("rwx------", rights(path.getParent().getParent()));

        // a folder in the way: the new file cannot be moved there
        Path blocked = Files.createDirectories(folder.resolve("blocked/settings.json/full"));
        assertFalse(SettingsFile.at(blocked.getParent()).write(SoundSettings.NONE));
        try (Stream<Path> all = Files.list(folder.resolve("blocked"))) {
            assertEquals(List.of(blocked.getParent()), all.toList());
        }
    }

    /** Which devices and channels: nothing that opens anything. */
    @Test
    void theyHoldNoSecret() {
        assertEquals(
                List.of("layer", "output", "outputChannels", "input", "inputChannels"),
                Stream.of(SoundSettings.class.getRecordComponents())
                        .map(c -> c.getName())
                        .toList());
    }

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }
}
