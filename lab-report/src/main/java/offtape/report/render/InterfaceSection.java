package offtape.report.render;

import java.util.List;
import offtape.report.result.InterfaceShare;
import offtape.report.result.Results;

/** What the interface has to do with the figures, where a loopback was taken out. */
final class InterfaceSection {

    private InterfaceSection() {}

    static boolean hasContent(Results results) {
        return results.interfaceShare() != null && !results.interfaceShare().entries().isEmpty();
    }

    /** The section. */
    static Section of(Results results) {
        Markup body =
                Section.paragraph(
                        "How much of this is the interface's own? It measured itself in a loop without"
                                + " the machine. Its response and delay are taken out, and the power of"
                                + " its noise. Harmonics and leaks of machine and interface add in a"
                                + " phase that is not known, so there nothing can be taken out, and the"
                                + " uncertainty holds the interface's share.");
        body.add(
                new DataTable(
                                "The interface's share",
                                List.of(
                                        "Figure",
                                        "Channel",
                                        "Interface alone",
                                        "As heard",
                                        "Share, %",
                                        "What was done",
                                        "Limits the figure"),
                                results.interfaceShare().entries().stream()
                                        .map(InterfaceSection::row)
                                        .toList())
                        .open());
        return new Section("interface", "The interface", body);
    }

    private static List<String> row(InterfaceShare.Entry e) {
        return List.of(
                e.figure(),
                e.channel() == null ? "both" : e.channel(),
                value(e.own(), e.unit()),
                e.heard() == null ? DataTable.NOTHING : value(e.heard(), e.unit()),
                e.sharePercent() == null
                        ? DataTable.NOTHING
                        : Numbers.significant(e.sharePercent(), 2),
                e.treatment(),
                e.limits() ? "yes" : "no");
    }

    private static String value(double value, String unit) {
        return Numbers.withUnit(Numbers.significant(value, "%".equals(unit) ? 2 : 4), unit);
    }
}
