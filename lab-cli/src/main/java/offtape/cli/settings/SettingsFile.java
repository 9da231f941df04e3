package offtape.cli.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.output.OwnersOnly;

/**
 * The settings of a user, readable by that user alone. They hold no secret. A file that cannot be
 * read or written never stops a command: it is a convenience.
 */
public final class SettingsFile {

    private final Path file;

    private SettingsFile(Path file) {
        this.file = file;
    }

    /** The file of this user. */
    public static SettingsFile ofUser() {
        Map<String, String> environment = System.getenv();
        return new SettingsFile(
                SettingsPlace.of(
                        System.getProperty("os.name", ""),
                        System.getProperty("user.home", "."),
                        environment));
    }

    /** A given file. */
    public static SettingsFile at(Path file) {
        return new SettingsFile(file);
    }

    /** Where it lies. */
    public Path path() {
        return file;
    }

    /** What is remembered; nothing if the file is not there or cannot be used. */
    public SoundSettings read() {
        if (!Files.isRegularFile(file)) {
            return SoundSettings.NONE;
        }
        try {
            return json().read(file);
        } catch (UnusableInputException e) {
            return SoundSettings.NONE;
        }
    }

    /** Remembers; returns whether that could be done. */
    public boolean write(SoundSettings settings) {
        try {
            OwnersOnly.makeAll(file.getParent());
            // readable by its owner alone
            Path fresh = Files.createTempFile(file.getParent(), "settings", ".new");
            try {
                Files.writeString(fresh, json().write(settings));
                Files.move(
                        fresh,
                        file,
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(fresh);
            }
            return true;
        } catch (IOException | UnsupportedOperationException e) {
            return false;
        }
    }

    // made when needed, since it costs half of what a short command takes
    private static StrictJson<SoundSettings> json() {
        return new StrictJson<>(SoundSettings.class, "a settings file");
    }
}
