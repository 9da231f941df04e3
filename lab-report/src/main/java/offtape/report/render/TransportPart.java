package offtape.report.render;

import java.util.List;
import offtape.report.result.TransportSpeed;

/** What the transport itself does, below what is heard of it in a return off tape. */
final class TransportPart {

    private TransportPart() {}

    /** Adds it to the section on speed. */
    static void add(Markup body, TransportSpeed own) {
        body.element("h3", "The transport itself").line();
        body.add(
                Section.paragraph(
                        "Record and replay head heard the same tape a moment apart. Wavering that is"
                                + " slow against that moment, or that swings just once or a whole"
                                + " number of times in it, is written and read alike and hardly"
                                + " heard; other wavering is heard up to twice as strong. The music"
                                + " gets what is heard in the return; whoever repairs the machine"
                                + " needs the transport's own."));
        if (own.headDelay().isKnown()) {
            body.add(
                    Section.paragraph(
                            "From record to replay head: "
                                    + Numbers.full(own.headDelay(), false)
                                    + ". "
                                    + own.delayFound()));
        }
        own.notes().forEach(note -> body.add(Section.paragraph(note)));
        if (TransportCharts.isThere(own)) {
            String over = "The transport's own deviation, freed of what the two heads make of it.";
            Chart trace = TransportCharts.trace(own, over);
            body.add(Section.figure(over, List.of(trace)));
            body.add(ChartTable.of(trace).folded());
            String caption =
                    SpeedComponents.caption(own.components())
                            + " Shaded upright: rates that both heads hear alike and that are not"
                            + " recovered. The area about the curve is how far it is uncertain.";
            Chart spectrum = TransportCharts.spectrum(own, caption);
            body.add(Section.figure(caption, List.of(spectrum)));
            body.add(ChartTable.of(spectrum).folded());
            body.add(
                    SpeedComponents.table(
                                    "lines of the transport's own deviation", own.components())
                            .folded());
        }
    }
}
