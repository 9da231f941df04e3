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
    static Section of(Wording words, Results results) {
        Markup body = Section.paragraph(words, words.say("session.interface-share"));
        body.add(
                new DataTable(
                                words.say("session.interface-table"),
                                List.of(
                                        words.say("session.interface-figure"),
                                        words.say("session.interface-channel"),
                                        words.say("session.interface-own"),
                                        words.say("session.interface-heard"),
                                        words.say("session.interface-percent"),
                                        words.say("session.interface-treatment"),
                                        words.say("session.interface-limits")),
                                results.interfaceShare().entries().stream()
                                        .map(e -> row(words, e))
                                        .toList())
                        .open());
        return new Section("interface", words.say("session.interface"), body);
    }

    private static List<String> row(Wording words, InterfaceShare.Entry e) {
        return List.of(
                words.told(e.figure()),
                words.channel(e.channel() == null ? "both" : e.channel()),
                value(words, e.own(), e.unit()),
                e.heard() == null ? DataTable.NOTHING : value(words, e.heard(), e.unit()),
                e.sharePercent() == null
                        ? DataTable.NOTHING
                        : words.significant(e.sharePercent(), 2),
                words.told(e.treatment()),
                words.say(e.limits() ? "session.yes" : "session.no"));
    }

    private static String value(Wording words, double value, String unit) {
        return Numbers.withUnit(words.significant(value, "%".equals(unit) ? 2 : 4), unit);
    }
}
