package offtape.cli.settings;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where a user's settings lie, by the convention of the platform. */
final class SettingsPlace {

    private static final String FILE = "settings.json";

    private SettingsPlace() {}

    /**
     * The settings file.
     *
     * @param system name of the operating system
     * @param home the user's home folder
     * @param environment environment variables
     */
    static Path of(String system, String home, Map<String, String> environment) {
        String os = system.toLowerCase(Locale.ROOT);
        if (os.startsWith("windows")) {
            String data = environment.get("APPDATA");
            Path base = given(data) ? Path.of(data) : Path.of(home, "AppData", "Roaming");
            return base.resolve("Offtape").resolve(FILE);
        }
        if (os.startsWith("mac")) {
            return Path.of(home, "Library", "Application Support", "Offtape", FILE);
        }
        String config = environment.get("XDG_CONFIG_HOME");
        // the convention leaves relative paths out of account
        boolean usable = given(config) && Path.of(config).isAbsolute();
        Path base = usable ? Path.of(config) : Path.of(home, ".config");
        return base.resolve("offtape").resolve(FILE);
    }

    private static boolean given(String text) {
        return text != null && !text.isEmpty();
    }
}
