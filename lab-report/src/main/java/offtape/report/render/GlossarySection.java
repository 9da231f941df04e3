package offtape.report.render;

import java.util.List;
import offtape.report.glossary.Glossary;

/** The words of the trade that a report uses, in plain ones. */
final class GlossarySection {

    private GlossarySection() {}

    /** The section. */
    static Section of(Wording words) {
        List<List<String>> rows =
                Glossary.in(words.language().locale()).stream()
                        .map(entry -> List.of(entry.term(), entry.meaning()))
                        .toList();
        DataTable table =
                new DataTable(
                        words.say("session.glossary-caption"),
                        List.of(
                                words.say("session.glossary-word"),
                                words.say("session.glossary-meaning")),
                        rows);
        Markup body =
                new Markup()
                        .open("details")
                        .element("summary", words.say("session.glossary-summary"))
                        .add(table.open())
                        .close("details")
                        .line();
        return new Section("glossary", words.say("session.glossary"), body);
    }
}
