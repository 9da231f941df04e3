package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.WorstTenSeconds;

/** How fast the tape runs and how steadily. */
final class SpeedSection {

    private SpeedSection() {}

    /** The section. */
    static Section of(Results results, LimitLines limits) {
        Markup body =
                Section.paragraph(
                        "Does it run at the right speed, and does it keep it? A wrong mean speed"
                                + " shifts every pitch; slow wavering (wow, below 6 Hz) is heard as"
                                + " swaying, fast wavering (flutter) as roughness.");
        Speed speed = results.speed();
        if (speed == null) {
            return new Section(
                    "speed",
                    "Speed",
                    body.add(Section.paragraph("No steady tone was found in this recording.")));
        }
        if (speed.passes() != null) {
            body.add(Section.paragraph(speed.passes().statement()));
        }
        speed.notes().forEach(note -> body.add(Section.paragraph(note)));
        if (SpeedReadingsChart.isThere(speed)) {
            String caption = readingsCaption(speed);
            body.add(
                    Section.figure(
                            caption, List.of(SpeedReadingsChart.of(speed, limits, caption))));
        }
        if (SpeedCharts.hasTrace(speed)) {
            String caption = traceCaption(speed);
            body.add(Section.figure(caption, List.of(SpeedCharts.trace(speed, caption))));
        }
        if (SpeedCharts.hasSpectrum(speed)) {
            String caption = SpeedComponents.caption(speed.components());
            Chart chart = SpeedCharts.spectrum(speed, caption);
            body.add(Section.figure(caption, List.of(chart)));
            body.add(ChartTable.of(chart).folded());
        }
        body.add(readings(speed).open());
        body.add(SpeedPasses.of(speed));
        if (speed.transport() != null) {
            TransportPart.add(body, speed.transport());
        }
        body.add(SpeedComponents.table("lines of the deviation", speed.components()).folded());
        body.add(SpeedReadingsChart.table(speed).folded());
        body.add(SpeedCharts.traceTable(speed).folded());
        return new Section("speed", "Speed", body);
    }

    private static String traceCaption(Speed speed) {
        List<String> sentences = new ArrayList<>();
        Quantity deviation = Find.figure(speed.deviation());
        Quantity drift = Find.figure(speed.drift());
        sentences.add("Each stretch spans the lowest and the highest deviation from the mean.");
        if (deviation.isKnown()) {
            sentences.add("The mean itself is " + Numbers.full(deviation, true) + ".");
        }
        if (drift.isKnown()) {
            sentences.add("Slow drift covers " + Numbers.full(drift, false) + ".");
        }
        return String.join(" ", sentences);
    }

    private static String readingsCaption(Speed speed) {
        String what = "The weighted quasi-peak reading as a meter would show it.";
        WorstTenSeconds worst = speed.worstTenSeconds();
        if (worst == null || !worst.weightedPeak().isKnown()) {
            return what;
        }
        return what
                + " The worst ten seconds begin at "
                + Numbers.decimal(worst.fromSeconds(), 1)
                + " s and reach "
                + Numbers.full(worst.weightedPeak(), false)
                + ".";
    }

    private static DataTable readings(Speed speed) {
        return speed.transport() == null
                ? SpeedTable.heard(speed)
                : SpeedTable.both(speed, speed.transport());
    }
}
