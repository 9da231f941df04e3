package offtape.cli.guide;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Opens a page in the user's browser, by the way of the platform. */
public final class PageOpener {

    private PageOpener() {}

    /** Opens it if that can be done; where it lies has been said anyhow. */
    public static void open(Path page) {
        command(System.getProperty("os.name", ""), System.getenv(), page)
                .ifPresent(
                        words -> {
                            try {
                                new ProcessBuilder(words)
                                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                                        .start();
                            } catch (IOException e) {
                                // the platform has no such command: the path was printed
                                return;
                            }
                        });
    }

    /** The command, or empty where nothing can be shown. */
    static Optional<List<String>> command(
            String system, Map<String, String> environment, Path page) {
        String os = system.toLowerCase(Locale.ROOT);
        if (os.startsWith("windows")) {
            return Optional.of(List.of("rundll32", "url.dll,FileProtocolHandler", page.toString()));
        }
        if (os.startsWith("mac")) {
            return Optional.of(List.of("open", page.toString()));
        }
        boolean shown =
                environment.containsKey("DISPLAY") || environment.containsKey("WAYLAND_DISPLAY");
        return shown ? Optional.of(List.of("xdg-open", page.toString())) : Optional.empty();
    }
}
