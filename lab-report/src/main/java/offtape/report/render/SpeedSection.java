package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.SpeedFloors;
import offtape.report.result.WorstTenSeconds;

/** How fast the tape runs and how steadily. */
final class SpeedSection {

    private static final SpeedFloors NO_FLOORS =
            new SpeedFloors(null, null, null, null, null, null, null, null);

    private SpeedSection() {}

    /** The section. */
    static Section of(Results results) {
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
            body.add(Section.figure(caption, List.of(SpeedReadingsChart.of(speed, caption))));
        }
        if (SpeedCharts.hasTrace(speed)) {
            String caption = traceCaption(speed);
            body.add(Section.figure(caption, List.of(SpeedCharts.trace(speed, caption))));
        }
        if (SpeedCharts.hasSpectrum(speed)) {
            String caption = SpeedComponents.caption(speed);
            body.add(Section.figure(caption, List.of(SpeedCharts.spectrum(speed, caption))));
        }
        body.add(readings(speed).open());
        body.add(SpeedPasses.of(speed));
        body.add(SpeedComponents.table(speed).folded());
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
        SpeedFloors floor = Objects.requireNonNullElse(speed.floors(), NO_FLOORS);
        List<List<String>> rows =
                Stream.of(
                                row("Mean deviation", speed.deviation(), true, null),
                                row("Drift, slower than 0.2 Hz", speed.drift(), false, null),
                                row(
                                        "Weighted peak (IEC 60386, DIN 45507)",
                                        speed.weightedPeak(),
                                        false,
                                        floor.weightedPeak()),
                                row(
                                        "Weighted, two sigma (AES6-2008)",
                                        speed.weightedTwoSigma(),
                                        false,
                                        floor.weightedTwoSigma()),
                                row(
                                        "Weighted rms (Japanese practice, WRMS)",
                                        speed.weightedRms(),
                                        false,
                                        floor.weightedRms()),
                                row(
                                        "Unweighted rms, 0.5 to 200 Hz (American practice)",
                                        speed.americanRms(),
                                        false,
                                        floor.americanRms()),
                                row(
                                        "Unweighted peak, 0.2 to 200 Hz",
                                        speed.unweightedPeak(),
                                        false,
                                        floor.unweightedPeak()),
                                row(
                                        "Unweighted rms, 0.2 to 200 Hz",
                                        speed.unweightedRms(),
                                        false,
                                        floor.unweightedRms()),
                                row("Wow rms, 0.2 to 6 Hz", speed.wowRms(), false, floor.wowRms()),
                                row(
                                        "Flutter rms, 6 to 200 Hz",
                                        speed.flutterRms(),
                                        false,
                                        floor.flutterRms()))
                        .toList();
        return new DataTable(
                "Speed, wow and flutter", List.of("Reading", "Figure", "Noise alone, %"), rows);
    }

    private static List<String> row(String name, Quantity figure, boolean signed, Double floor) {
        return List.of(
                name,
                Numbers.full(Find.figure(figure), signed),
                floor == null ? "–" : Numbers.significant(floor, 2));
    }
}
