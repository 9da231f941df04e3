package offtape.report.render;

import java.util.List;
import offtape.report.headline.Subject;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;

/** The first screen: which machine, what to do with it, what was found, what to beware of. */
final class Opening {

    private Opening() {}

    /** Everything above the sections. */
    static Markup of(Wording words, Results results) {
        Markup out =
                new Markup()
                        .open("header")
                        .line()
                        .open("p", "class", "sheet")
                        .element(
                                "span",
                                words.say(
                                        Subject.of(results)
                                                .words(
                                                        "session.sheet-machine",
                                                        "session.sheet-interface")))
                        .text(" ")
                        .element("span", words.moment(results.session().madeAt()))
                        .close("p")
                        .line()
                        .element("h1", words.machine(results.session()))
                        .line()
                        .element("p", words.description(results.session()), "class", "identity")
                        .line();
        return out.add(DecisionPart.of(words, results))
                .element(
                        "p",
                        words.unbroken(String.join(" ", Findings.of(words, results))),
                        "class",
                        "findings")
                .line()
                .close("header")
                .line();
    }

    /** What could spoil the figures, before anybody reads them; nothing if all is well. */
    static Markup warnings(Wording words, Results results) {
        List<HealthNote> serious =
                results.health().stream().filter(h -> !"note".equals(h.severity())).toList();
        if (serious.isEmpty()) {
            return new Markup();
        }
        Markup out =
                new Markup()
                        .open("aside", "class", "warnings", "aria-labelledby", "warnings-heading")
                        .line()
                        .element("h2", words.say("session.warnings"), "id", "warnings-heading")
                        .open("ul");
        serious.forEach(note -> out.add(item(words, note)));
        return out.close("ul").close("aside").line();
    }

    /** One health note as an item of a list. */
    static Markup item(Wording words, HealthNote note) {
        return new Markup()
                .open("li")
                .element("strong", words.say(severity(note.severity())))
                .text(" " + words.told(note.message()))
                .close("li")
                .line();
    }

    private static String severity(String severity) {
        return switch (severity == null ? "" : severity) {
            case "blocking" -> "session.severity-blocking";
            case "warning" -> "session.severity-warning";
            default -> "session.severity-note";
        };
    }
}
