package offtape.dist;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.spi.ToolProvider;

/** Runs tools of the JDK and the image's own Java. */
final class Command {

    private Command() {}

    /** Runs a tool of the running JDK; returns what it prints. */
    static String tool(String name, List<String> arguments) {
        ToolProvider tool =
                ToolProvider.findFirst(name)
                        .orElseThrow(
                                () ->
                                        new IllegalStateException(
                                                "this Java has no "
                                                        + name
                                                        + "; take a whole JDK, with its jmods"));
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out);
        int code = tool.run(writer, writer, arguments.toArray(String[]::new));
        writer.flush();
        if (code != 0) {
            throw new IllegalStateException(name + " " + arguments + " failed:\n" + out);
        }
        return out.toString();
    }

    /** Runs a program to its end; what it prints goes into a file. */
    static void program(Path log, List<String> words) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
        builder.redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().keySet().removeIf(k -> k.endsWith("JAVA_OPTIONS"));
        try {
            int code = builder.start().waitFor();
            if (code != 0) {
                throw new IllegalStateException(words + " ended with " + code + "; see " + log);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
