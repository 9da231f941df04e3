package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.report.fault.FaultNote;
import offtape.report.fault.FaultPage;

/** Faults as lines of plain text. */
final class FaultPageWords {

    private static final String INDENT = "  ";
    private static final String ENTRY = "- ";

    private final Speech speech;

    /** The words spoken on a terminal. */
    FaultPageWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** Each fault in a line: code, then name. */
    List<String> list(List<FaultNote> notes) {
        int widest = notes.stream().mapToInt(n -> n.code().length()).max().orElse(1);
        return notes.stream()
                .map(
                        n ->
                                n.code()
                                        + " ".repeat(widest + 2 - n.code().length())
                                        + speech.told(n.name()))
                .toList();
    }

    /**
     * All that is known of one fault.
     *
     * @param columns width of the lines, characters
     */
    List<String> page(FaultPage page, int columns) {
        List<String> lines = new ArrayList<>(wrapped(speech.told(page.title()), "", columns));
        page.facts().forEach(f -> lines.addAll(wrapped(speech.told(f), "", columns)));
        for (FaultPage.Section section : page.sections()) {
            lines.add("");
            lines.add(speech.told(section.heading()));
            section.sentences()
                    .forEach(s -> lines.addAll(wrapped(speech.told(s), INDENT, columns)));
            section.entries().forEach(e -> lines.addAll(entry(e, columns)));
        }
        return lines;
    }

    private List<String> entry(FaultPage.Entry e, int columns) {
        String name = speech.told(e.name());
        String words = speech.told(e.words());
        String text =
                e.code() == null
                        ? speech.say("faults.entry", name, words)
                        : speech.say("faults.entry-code", name, e.code(), words);

        String hanging = INDENT + " ".repeat(ENTRY.length());
        List<String> lines = wrapped(text, hanging, columns);
        lines.set(0, INDENT + ENTRY + lines.get(0).strip());
        return lines;
    }

    /**
     * Words set in lines, each begun by an indent; a word that is longer than a line stays whole.
     */
    static List<String> wrapped(String text, String indent, int columns) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0
                    && indent.length() + line.length() + 1 + word.length() > columns) {
                lines.add(indent + line);
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(indent + line);
        return lines;
    }
}
