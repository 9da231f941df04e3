package offtape.report.render;

import java.util.List;
import offtape.report.headline.Subject;
import offtape.report.judge.DecisionWords;
import offtape.report.result.Results;
import offtape.report.result.Verdict;

/** What to do with the machine, why, what next and what to beware of: the head of a report. */
record DecisionPart(Wording words) {

    /** The part; nothing if there is no verdict. */
    static Markup of(Wording words, Results results) {
        return new DecisionPart(words).part(results);
    }

    private Markup part(Results results) {
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
                        .element("h2", words.told(DecisionWords.of(verdict)))
                        .line();
        if (Wording.isGiven(verdict.reason())) {
            out.add(Section.paragraph(words, words.told(verdict.reason())));
        }
        return out.add(list("ul", verdict.because()))
                .add(next(verdict))
                .add(cautions(verdict))
                .close("div")
                .line();
    }

    private Markup bare(Verdict verdict) {
        Markup out = new Markup();
        if (Wording.isGiven(verdict.reason())) {
            out.element("p", words.told(verdict.reason()), "class", "verdict").line();
        }
        return out.add(list("ul", verdict.because()));
    }

    private Markup next(Verdict verdict) {
        return verdict.next().isEmpty()
                ? new Markup()
                : new Markup()
                        .element("h3", words.say("session.next"))
                        .line()
                        .add(list("ol", verdict.next()));
    }

    private Markup cautions(Verdict verdict) {
        return verdict.cautions().isEmpty()
                ? new Markup()
                : new Markup()
                        .open("div", "class", "cautions")
                        .element("h3", words.say("session.cautions"))
                        .line()
                        .add(list("ul", verdict.cautions()))
                        .close("div")
                        .line();
    }

    private Markup list(String tag, List<String> sentences) {
        if (sentences.isEmpty()) {
            return new Markup();
        }
        Markup out = new Markup().open(tag).line();
        sentences.forEach(s -> out.element("li", words.unbroken(words.told(s))).line());
        return out.close(tag).line();
    }
}
