package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** What is remembered for a user: a file that cannot be used stops nothing. */
@Tag("fuzz")
@Timeout(20)
final class SettingsFuzzTest {

    private final HostileFile file = HostileFile.named("settings.json");
    private final HostileFile other = HostileFile.named("settings.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        SoundSettings read =
                file.holding(bytes).read(path -> SettingsFile.at(path).read()).orElseThrow();
        if (read.equals(SoundSettings.NONE)) {
            return;
        }
        SettingsFile kept = SettingsFile.at(other.path());
        assertTrue(kept.write(read.changedBy(SoundSettings.NONE)), "not written");
        assertEquals(read, kept.read());
    }
}
