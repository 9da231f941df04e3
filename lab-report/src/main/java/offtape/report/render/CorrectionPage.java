package offtape.report.render;

import java.util.List;
import offtape.report.apply.correct.Correction;

/**
 * What to do before recording on a machine, as a page.
 *
 * @param words of the reader
 */
record CorrectionPage(Wording words) {

    /** The page. */
    String of(Correction c) {
        String title = words.say("correction.title", words.machine(c.session()));
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", words.say("correction.sheet"), "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", words.description(c.session()), "class", "identity")
                        .line();
        opening.add(new CorrectionOpening(words).of(c));
        opening.close("header").line();
        CorrectionFilterSection filter = new CorrectionFilterSection(words);
        CorrectionTapeSection tape = new CorrectionTapeSection(words);
        List<Section> sections =
                List.of(
                        filter.response(c),
                        filter.filter(c),
                        tape.noise(c),
                        tape.headroom(c),
                        new CorrectionLevelSection(words).of(c));
        return Page.of(
                words,
                words.say("correction.page-title", title),
                opening,
                sections,
                List.of(c.session()));
    }
}
