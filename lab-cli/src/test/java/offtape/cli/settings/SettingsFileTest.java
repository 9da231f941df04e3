package offtape.cli.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
}
