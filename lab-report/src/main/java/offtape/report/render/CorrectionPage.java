package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.NoiseChange;

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
        findings(c)
                .forEach(f -> opening.element("p", Words.unbroken(f), "class", "findings").line());
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

    private static List<String> findings(Correction c) {
        List<String> lines = new ArrayList<>();
        for (ChannelCorrection x : c.channels()) {
            lines.add(CorrectionFilterSection.met(x));
        }
        lines.add(
                "Ahead of the filter the programme has to be "
                        + Numbers.decimal(c.lowerByDb(), 1)
                        + " dB lower, so that boosted tones stay within full scale.");
        for (NoiseChange n : c.noise()) {
            if (n.aWeighted().isKnown()) {
                lines.add(
                        Words.sentence(n.channel())
                                + ": the same after the tape would change the hiss by "
                                + Numbers.level(n.aWeighted().value())
                                + " (A-weighted).");
            }
        }
        for (Headroom h : c.headroom()) {
            if (h.highsBelow().isKnown()) {
                lines.add(
                        Words.sentence(h.channel())
                                + ": highs of the programme stay below "
                                + Numbers.level(h.highsBelow().value())
                                + " re reference, or the tape compresses them.");
            }
        }
        c.levels().forEach(o -> lines.add(Words.sentence(CorrectionLevelSection.sweetSpot(o))));
        lines.addAll(c.notes());
        return lines;
    }
}
