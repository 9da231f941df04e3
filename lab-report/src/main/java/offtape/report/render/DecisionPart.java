package offtape.report.render;

import java.util.List;
import offtape.report.headline.Subject;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What to do with the machine, why, what next and what to beware of: the head of a report. */
final class DecisionPart {

    private DecisionPart() {}

    /** The part; nothing if there is no verdict. */
    static Markup of(Results results) {
        Verdict verdict = results.verdict();
        if (verdict == null) {
            return new Markup();
        }
        boolean isBare =
                verdict.decision() == null
                        && verdict.because().isEmpty()
                        && verdict.next().isEmpty();
        if (isBare || Subject.of(results) == Subject.INTERFACE) {
            return bare(verdict);
        }
        Markup out =
                new Markup()
                        .open("div", "class", "decision")
                        .line()
                        .element("h2", DecisionWords.of(verdict))
                        .line();
        if (Words.isGiven(verdict.reason())) {
            out.add(Section.paragraph(verdict.reason()));
        }
        return out.add(list("ul", verdict.because()))
                .add(next(verdict))
                .add(cautions(verdict))
                .close("div")
                .line();
    }

    private static Markup bare(Verdict verdict) {
        Markup out = new Markup();
        if (Words.isGiven(verdict.reason())) {
            out.element("p", verdict.reason(), "class", "verdict").line();
        }
        return out.add(list("ul", verdict.because()));
    }

    private static Markup next(Verdict verdict) {
        return verdict.next().isEmpty()
                ? new Markup()
                : new Markup()
                        .element("h3", "What to do next")
                        .line()
                        .add(list("ol", verdict.next()));
    }

    private static Markup cautions(Verdict verdict) {
        return verdict.cautions().isEmpty()
                ? new Markup()
                : new Markup()
                        .open("div", "class", "cautions")
                        .element("h3", "▲ Beware")
                        .line()
                        .add(list("ul", verdict.cautions()))
                        .close("div")
                        .line();
    }

    private static Markup list(String tag, List<String> sentences) {
        if (sentences.isEmpty()) {
            return new Markup();
        }
        Markup out = new Markup().open(tag).line();
        sentences.forEach(s -> out.element("li", Words.unbroken(s)).line());
        return out.close(tag).line();
    }
}
