package offtape.report.render;

import java.util.List;
import java.util.Locale;
import offtape.report.glossary.Glossary;

/** The words of the trade that a report uses, in plain ones. */
final class GlossarySection {

    private GlossarySection() {}

    /** The section. */
    static Section of() {
        List<List<String>> rows =
                Glossary.in(Locale.ENGLISH).stream()
                        .map(entry -> List.of(entry.term(), entry.meaning()))
                        .toList();
        DataTable table =
                new DataTable("Words of the trade", List.of("Word", "In plain words"), rows);
        Markup body =
                new Markup()
                        .open("details")
                        .element("summary", "What the words of this report mean")
                        .add(table.open())
                        .close("details")
                        .line();
        return new Section("glossary", "Words", body);
    }
}
