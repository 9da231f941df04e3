package offtape.report.fault;

import java.util.List;
import java.util.Locale;

/** Pages on faults as Markdown: the same text that stands in the documentation. */
final class FaultMarkdown {

    private static final String MADE =
            "<!-- Written from the catalogue of faults by FaultPagesTest; do not edit by hand. -->\n";

    private FaultMarkdown() {}

    /** One page; its look-alikes are linked as files beside it. */
    static String page(FaultPage page) {
        StringBuilder text = new StringBuilder(MADE);
        text.append("# ").append(page.title()).append("\n\n");
        text.append(String.join(" ", page.facts())).append(" [All faults](README.md)\n");
        page.sections().forEach(s -> section(text, s));
        return text.toString();
    }

    /** The page that names all others. */
    static String index(List<FaultNote> notes) {
        StringBuilder text = new StringBuilder(MADE);
        text.append(
                """
                # Faults of tape machines

                What Offtape knows of each fault: what it does to the figures, what looks like it,
                what to try first, what a repair is. `./offtape faults CODE` prints a page at a terminal.

                | fault | code | sessions that can show it | repair takes |
                | --- | --- | --- | --- |
                """);
        for (FaultNote note : notes) {
            text.append(
                    String.format(
                            Locale.ROOT,
                            "| [%s](%s.md) | `%s` | %s | %s |\n",
                            note.name(),
                            note.code(),
                            note.code(),
                            String.join(", ", note.modes()),
                            FaultWords.shortEffort(note)));
        }
        return text.toString();
    }

    private static void section(StringBuilder text, FaultPage.Section section) {
        text.append("\n## ").append(section.heading()).append("\n\n");
        text.append(String.join("\n\n", section.sentences()));
        text.append(section.sentences().isEmpty() ? "" : "\n");
        boolean isTable = section.entries().stream().anyMatch(e -> e.code() == null);
        if (isTable) {
            text.append("| figure | typical change |\n| --- | --- |\n");
        }
        for (FaultPage.Entry e : section.entries()) {
            text.append(isTable ? row(e) : item(e));
        }
    }

    private static String item(FaultPage.Entry e) {
        return String.format(Locale.ROOT, "- [%s](%s.md): %s\n", e.name(), e.code(), e.words());
    }

    private static String row(FaultPage.Entry e) {
        return String.format(Locale.ROOT, "| %s | %s |\n", cell(e.name()), cell(e.words()));
    }

    private static String cell(String words) {
        return words.replace("|", "\\|");
    }
}
