package offtape.report.render;

import java.util.List;
import offtape.report.fault.Likelihood;
import offtape.report.result.Verdict;

/** Likely causes with what speaks for each, most likely first. */
record CausesPart(Wording words) {

    /** All of them; nothing if there are none. */
    static Markup of(Wording words, List<Verdict.Fault> faults) {
        CausesPart part = new CausesPart(words);
        Markup out = new Markup();
        faults.forEach(fault -> out.add(part.cause(fault)));
        return out;
    }

    private Markup cause(Verdict.Fault fault) {
        Markup out =
                new Markup()
                        .element("h3", title(fault))
                        .line()
                        .add(
                                labelled(
                                        "session.how-likely",
                                        Likelihood.words(fault.likelihood()) + "."))
                        .add(listed("session.evidence", fault.evidence()))
                        .add(listed("session.unlike", fault.unlike()));
        if (Wording.isGiven(fault.remedy())) {
            out.add(labelled("session.first", fault.remedy()));
        }
        if (Wording.isGiven(fault.caution())) {
            out.add(labelled("session.beware", fault.caution()));
        }
        return out;
    }

    private String title(Verdict.Fault fault) {
        String name =
                Wording.isGiven(fault.name())
                        ? words.told(fault.name())
                        : Wording.isGiven(fault.code())
                                ? fault.code()
                                : words.say("session.cause-unnamed");
        return Wording.isGiven(fault.channel())
                ? name + " (" + words.channel(fault.channel()) + ")"
                : name;
    }

    private Markup labelled(String label, String text) {
        return new Markup()
                .open("p")
                .element("strong", words.say(label))
                .text(" " + words.unbroken(words.told(text)))
                .close("p")
                .line();
    }

    private Markup listed(String label, List<String> lines) {
        if (lines.isEmpty()) {
            return new Markup();
        }
        if (lines.size() == 1) {
            return labelled(label, lines.get(0));
        }
        Markup out =
                new Markup()
                        .open("p")
                        .element("strong", words.say(label))
                        .close("p")
                        .open("ul")
                        .line();
        lines.forEach(line -> out.element("li", words.unbroken(words.told(line))).line());
        return out.close("ul").line();
    }
}
