package offtape.report.render;

import java.util.List;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;

/** The state of the recording, and the user's own remark. */
final class NotesSection {

    private NotesSection() {}

    /** The section. */
    static Section of(Results results) {
        Markup body = new Markup();
        List<HealthNote> notes = results.health();
        if (notes.isEmpty()) {
            body.add(Section.paragraph("Nothing in the recording calls for a remark."));
        } else {
            body.open("ul").line();
            notes.forEach(note -> body.add(Opening.item(note)));
            body.close("ul").line();
        }
        if (Words.isGiven(results.session().note())) {
            body.element("h3", "Remark of whoever measured");
            body.add(Section.paragraph(results.session().note()));
        }
        return new Section("notes", "State of the recording", body);
    }
}
