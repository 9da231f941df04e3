package offtape.cli.manual;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What stands under the options in a command's help, parted into what is typed and what is read. A
 * line that goes on ends with a backslash; a command stands behind a word and a colon, or indented
 * under its words.
 *
 * @param examples commands with the words that go before them, as they stand in the help
 * @param remarks paragraphs
 */
record Footer(List<String> examples, List<String> remarks) {

    private static final String COMMAND = "offtape ";

    /** Reads the end of a command's help. */
    static Footer of(CommandSpec command) {
        List<String> examples = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        StringBuilder paragraph = new StringBuilder();
        List<String> lines = List.of(command.usageMessage().footer());
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean introduces = line.endsWith(":") && isTyped(lines, i + 1);
            if (line.isBlank() || introduces || isTyped(lines, i)) {
                add(paragraph, remarks);
            }
            if (introduces || isTyped(lines, i)) {
                examples.add(line.replaceFirst("^Examples?: ", ""));
            } else if (!line.isBlank()) {
                paragraph.append(paragraph.isEmpty() ? "" : " ").append(line.strip());
            }
        }
        add(paragraph, remarks);
        return new Footer(List.copyOf(examples), List.copyOf(remarks));
    }

    private static boolean isTyped(List<String> lines, int index) {
        if (index >= lines.size()) {
            return false;
        }
        String line = lines.get(index);
        return line.strip().startsWith(COMMAND)
                || line.contains(": " + COMMAND)
                || index > 0 && lines.get(index - 1).endsWith("\\");
    }

    private static void add(StringBuilder paragraph, List<String> remarks) {
        if (!paragraph.isEmpty()) {
            remarks.add(paragraph.toString());
            paragraph.setLength(0);
        }
    }
}
