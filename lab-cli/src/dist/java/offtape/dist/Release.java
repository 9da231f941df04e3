package offtape.dist;

import java.time.Instant;
import java.util.Locale;

/**
 * What is made.
 *
 * @param version of Offtape, such as 0.1.0
 * @param timestamp of the sources, in ISO 8601, which all files get
 */
record Release(String version, String timestamp) {

    private static final int DAY = 10;

    /** Name and version. */
    String software() {
        return "Offtape " + version;
    }

    /** Day of the sources, such as 2026-01-01. */
    String day() {
        return timestamp.substring(0, DAY);
    }

    /** Moment that all files get. */
    Instant time() {
        return Instant.parse(timestamp);
    }

    /** Name of the folder, such as {@code offtape-0.1.0-linux-x64}. */
    String imageName() {
        return "offtape-" + version + "-" + system() + "-" + processor();
    }

    /** Whether it is made for Windows. */
    static boolean isWindows() {
        return system().equals("windows");
    }

    private static String system() {
        String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            return "windows";
        }
        return name.startsWith("mac") ? "macos" : name.replaceAll("[^a-z0-9]", "");
    }

    private static String processor() {
        String name = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
        return switch (name) {
            case "amd64", "x86_64" -> "x64";
            case "aarch64" -> "arm64";
            default -> name;
        };
    }
}
