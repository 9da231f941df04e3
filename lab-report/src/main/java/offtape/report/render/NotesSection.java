package offtape.report.render;

import java.util.List;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;

/** The state of the recording, and the user's own remark. */
final class NotesSection {

    private NotesSection() {}

    /** The section. */
    static Section of(Wording words, Results results) {
        Markup body = new Markup();
        List<HealthNote> notes = results.health();
        if (notes.isEmpty()) {
            body.add(Section.paragraph(words, words.say("session.no-notes")));
        } else {
            body.open("ul").line();
            notes.forEach(note -> body.add(Opening.item(words, note)));
            body.close("ul").line();
        }
        if (Wording.isGiven(results.session().note())) {
            body.element("h3", words.say("session.remark"));
            body.add(Section.paragraph(words, results.session().note()));
        }
        return new Section("notes", words.say("session.notes"), body);
    }
}
