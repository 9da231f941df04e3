package offtape.report.render;

import java.util.List;
import offtape.report.result.TransportSpeed;

/** What the transport itself does, below what is heard of it in a return off tape. */
final class TransportPart {

    private TransportPart() {}

    /** Adds it to the section on speed. */
    static void add(Wording words, Markup body, TransportSpeed own) {
        body.element("h3", words.say("speed.transport-heading")).line();
        body.add(Section.paragraph(words, words.say("speed.transport-introduction")));
        if (own.headDelay().isKnown()) {
            body.add(
                    Section.paragraph(
                            words,
                            words.say(
                                    "speed.transport-delay",
                                    words.full(own.headDelay(), false),
                                    words.told(own.delayFound()))));
        }
        own.notes().forEach(note -> body.add(Section.paragraph(words, words.told(note))));
        if (TransportCharts.isThere(own)) {
            SpeedComponents lines = new SpeedComponents(words);
            String over = words.say("speed.transport-trace-caption");
            Chart trace = TransportCharts.trace(words, own, over);
            body.add(Section.figure(words, over, List.of(trace)));
            body.add(ChartTable.of(words, trace).folded(words));
            String caption =
                    lines.caption(own.components())
                            + " "
                            + words.say("speed.transport-spectrum-caption");
            Chart spectrum = TransportCharts.spectrum(words, own, caption);
            body.add(Section.figure(words, caption, List.of(spectrum)));
            body.add(ChartTable.of(words, spectrum).folded(words));
            body.add(
                    lines.table(words.say("speed.transport-lines"), own.components())
                            .folded(words));
        }
    }
}
