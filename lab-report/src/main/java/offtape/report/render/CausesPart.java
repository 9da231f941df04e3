package offtape.report.render;

import java.util.List;
import offtape.report.fault.Likelihood;
import offtape.report.result.Verdict;

/** Likely causes with what speaks for each, most likely first. */
final class CausesPart {

    private CausesPart() {}

    /** All of them; nothing if there are none. */
    static Markup of(List<Verdict.Fault> faults) {
        Markup out = new Markup();
        faults.forEach(fault -> out.add(cause(fault)));
        return out;
    }

    private static Markup cause(Verdict.Fault fault) {
        Markup out =
                new Markup()
                        .element("h3", title(fault))
                        .line()
                        .add(labelled("How likely:", Likelihood.words(fault.likelihood()) + "."))
                        .add(listed("What speaks for it:", fault.evidence()))
                        .add(listed("How it was told from what looks like it:", fault.unlike()));
        if (Words.isGiven(fault.remedy())) {
            out.add(labelled("First thing to try:", fault.remedy()));
        }
        if (Words.isGiven(fault.caution())) {
            out.add(labelled("▲ Beware:", fault.caution()));
        }
        return out;
    }

    private static String title(Verdict.Fault fault) {
        String name =
                Words.isGiven(fault.name())
                        ? fault.name()
                        : Words.isGiven(fault.code()) ? fault.code() : "A cause without a name";
        return Words.isGiven(fault.channel()) ? name + " (" + fault.channel() + ")" : name;
    }

    private static Markup labelled(String label, String text) {
        return new Markup()
                .open("p")
                .element("strong", label)
                .text(" " + Words.unbroken(text))
                .close("p")
                .line();
    }

    private static Markup listed(String label, List<String> lines) {
        if (lines.isEmpty()) {
            return new Markup();
        }
        if (lines.size() == 1) {
            return labelled(label, lines.get(0));
        }
        Markup out = new Markup().open("p").element("strong", label).close("p").open("ul").line();
        lines.forEach(line -> out.element("li", Words.unbroken(line)).line());
        return out.close("ul").line();
    }
}
