package offtape.report.render;

import java.util.List;
import java.util.Map;
import offtape.report.result.Results;

/** How the figures were found, by which standards, and what they cannot say. */
record MethodSection(Wording words) {

    private static final List<String> METHODS =
            List.of(
                    "session.method-response",
                    "session.method-losses",
                    "session.method-speed",
                    "session.method-transport",
                    "session.method-distortion",
                    "session.method-noise",
                    "session.method-channels",
                    "session.method-dropouts",
                    "session.method-levels");

    private static final List<String> CERTAINTY =
            List.of("session.certainty-within", "session.certainty-not");

    private static final List<String> SOURCES =
            List.of(
                    "session.source-wow",
                    "session.source-two-sigma",
                    "session.source-a-weighting",
                    "session.source-itu",
                    "session.source-losses",
                    "session.source-equalisation",
                    "session.source-sweeps",
                    "session.source-synchronised",
                    "session.source-reproduction",
                    "session.source-time-constants",
                    "session.source-uncertainty");

    /** The section. */
    static Section of(Wording words, Results results) {
        return new MethodSection(words).section(results);
    }

    private Section section(Results results) {
        Markup body = new Markup();
        METHODS.forEach(key -> body.add(paragraph(words.say(key))));
        body.element("h3", words.say("session.certainty")).line();
        CERTAINTY.forEach(key -> body.add(paragraph(words.say(key))));
        body.element("h3", words.say("session.cannot-say")).line();
        ModeWords.of(words, results.session().mode()).forEach(t -> body.add(paragraph(t)));
        unknown(UnknownFigures.of(words, results), body);
        body.element("h3", words.say("session.sources")).open("ul").line();
        SOURCES.forEach(key -> body.element("li", words.say(key)).line());
        return new Section("method", words.say("session.method"), body.close("ul").line());
    }

    private Markup paragraph(String text) {
        return Section.paragraph(words, text);
    }

    private static void unknown(Map<String, List<String>> byReason, Markup body) {
        if (byReason.isEmpty()) {
            return;
        }
        body.open("ul").line();
        byReason.forEach(
                (reason, names) ->
                        body.element("li", String.join(", ", names) + ": " + reason).line());
        body.close("ul").line();
    }
}
