package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import offtape.cli.command.Commands;
import offtape.cli.manual.Manual;
import offtape.cli.manual.Shell;
import picocli.CommandLine.Model.CommandSpec;

/** What lies around the runtime: launcher, manual, completion of shells, short usage, licence. */
final class Surroundings {

    private Surroundings() {}

    /**
     * Writes it.
     *
     * @param sources the folder of what is written by hand
     * @param project the folder of the whole project
     */
    static void write(Path image, Path sources, Path project, Release release) throws IOException {
        CommandSpec root = Commands.described();
        for (Map.Entry<String, String> page :
                Manual.pages(root, release.day(), release.software()).entrySet()) {
            text(image.resolve(page.getKey()), page.getValue());
        }
        for (Shell shell : Shell.values()) {
            text(image.resolve(shell.place()), shell.completion(root));
        }
        Path launcher =
                image.resolve("bin").resolve(Release.isWindows() ? "offtape.cmd" : "offtape");
        String lines = Files.readString(sources.resolve("launch").resolve(launcher.getFileName()));
        text(launcher, Release.isWindows() ? lines.replace("\n", "\r\n") : lines);
        launcher.toFile().setExecutable(true, false);
        text(
                image.resolve("README.txt"),
                Files.readString(sources.resolve("text/README.txt"))
                        .replace("VERSION", release.version()));
        text(image.resolve("LICENSE"), Files.readString(project.resolve("LICENSE")));
    }

    private static void text(Path file, String text) throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
