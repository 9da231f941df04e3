package offtape.report.render;

import java.util.List;
import offtape.report.headline.Subject;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;

/** The first screen: which machine, what to do with it, what was found, what to beware of. */
final class Opening {

    private Opening() {}

    /** Everything above the sections. */
    static Markup of(Results results) {
        Markup out =
                new Markup()
                        .open("header")
                        .line()
                        .open("p", "class", "sheet")
                        .element(
                                "span",
                                Subject.of(results)
                                        .words(
                                                "Tape machine measurement sheet",
                                                "Sound interface measurement sheet"))
                        .text(" ")
                        .element("span", Words.moment(results.session().madeAt()))
                        .close("p")
                        .line()
                        .element("h1", Words.machine(results.session()))
                        .line()
                        .element("p", Words.description(results.session()), "class", "identity")
                        .line();
        return out.add(DecisionPart.of(results))
                .element(
                        "p",
                        Words.unbroken(String.join(" ", Findings.of(results))),
                        "class",
                        "findings")
                .line()
                .close("header")
                .line();
    }

    /** What could spoil the figures, before anybody reads them; nothing if all is well. */
    static Markup warnings(Results results) {
        List<HealthNote> serious =
                results.health().stream().filter(h -> !"note".equals(h.severity())).toList();
        if (serious.isEmpty()) {
            return new Markup();
        }
        Markup out =
                new Markup()
                        .open("aside", "class", "warnings", "aria-labelledby", "warnings-heading")
                        .line()
                        .element("h2", "Before you read the figures", "id", "warnings-heading")
                        .open("ul");
        serious.forEach(note -> out.add(item(note)));
        return out.close("ul").close("aside").line();
    }

    /** One health note as an item of a list. */
    static Markup item(HealthNote note) {
        return new Markup()
                .open("li")
                .element("strong", severity(note.severity()))
                .text(" " + note.message())
                .close("li")
                .line();
    }

    private static String severity(String severity) {
        return switch (severity == null ? "" : severity) {
            case "blocking" -> "✕ Stop:";
            case "warning" -> "▲ Warning:";
            default -> "Note:";
        };
    }
}
