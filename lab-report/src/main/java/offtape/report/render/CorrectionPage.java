package offtape.report.render;

import java.util.List;
import offtape.report.apply.correct.Correction;

/** What to do before recording on a machine, as a page. */
final class CorrectionPage {

    private CorrectionPage() {}

    /** The page. */
    static String of(Correction c) {
        String title = "Before recording on " + Words.machine(c.session());
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", "Correction", "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", Words.description(c.session()), "class", "identity")
                        .line();
        opening.add(CorrectionOpening.of(c));
        opening.close("header").line();
        List<Section> sections =
                List.of(
                        CorrectionFilterSection.response(c),
                        CorrectionFilterSection.filter(c),
                        CorrectionTapeSection.noise(c),
                        CorrectionTapeSection.headroom(c),
                        CorrectionLevelSection.of(c));
        return Page.of(title + " – Offtape report", opening, sections, List.of(c.session()));
    }
}
