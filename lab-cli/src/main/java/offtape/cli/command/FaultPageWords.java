package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.report.fault.FaultNote;
import offtape.report.fault.FaultPage;

/** Faults as lines of plain text. */
final class FaultPageWords {

    private static final String INDENT = "  ";
    private static final String ENTRY = "- ";

    private FaultPageWords() {}

    /** Each fault in a line: code, then name. */
    static List<String> list(List<FaultNote> notes) {
        int widest = notes.stream().mapToInt(n -> n.code().length()).max().orElse(1);
        return notes.stream()
                .map(n -> n.code() + " ".repeat(widest + 2 - n.code().length()) + n.name())
                .toList();
    }

    /**
     * All that is known of one fault.
     *
     * @param columns width of the lines, characters
     */
    static List<String> page(FaultPage page, int columns) {
        List<String> lines = new ArrayList<>(wrapped(page.title(), "", columns));
        page.facts().forEach(f -> lines.addAll(wrapped(f, "", columns)));
        for (FaultPage.Section section : page.sections()) {
            lines.add("");
            lines.add(section.heading());
            section.sentences().forEach(s -> lines.addAll(wrapped(s, INDENT, columns)));
            section.entries().forEach(e -> lines.addAll(entry(e, columns)));
        }
        return lines;
    }

    private static List<String> entry(FaultPage.Entry e, int columns) {
        String code = e.code() == null ? "" : " (" + e.code() + ")";
        String hanging = INDENT + " ".repeat(ENTRY.length());
        List<String> lines = wrapped(e.name() + code + ": " + e.words(), hanging, columns);
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
