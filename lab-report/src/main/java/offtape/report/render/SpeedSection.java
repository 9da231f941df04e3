package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Speed;

/** How fast the tape runs and how steadily. */
final class SpeedSection {

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
        if (SpeedCharts.hasTrace(speed)) {
            String caption = traceCaption(speed);
            body.add(Section.figure(caption, List.of(SpeedCharts.trace(speed, caption))));
        }
        if (SpeedCharts.hasSpectrum(speed)) {
            String caption = SpeedComponents.caption(speed);
            body.add(Section.figure(caption, List.of(SpeedCharts.spectrum(speed, caption))));
        }
        body.add(readings(speed).open());
        body.add(SpeedComponents.table(speed).folded());
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

    private static DataTable readings(Speed speed) {
        List<List<String>> rows =
                Stream.of(
                                row("Mean deviation", speed.deviation(), true),
                                row("Drift, slower than 0.2 Hz", speed.drift(), false),
                                row("Weighted peak (IEC 60386)", speed.weightedPeak(), false),
                                row("Weighted, two sigma (AES6)", speed.weightedTwoSigma(), false),
                                row("Weighted rms", speed.weightedRms(), false),
                                row("Unweighted peak", speed.unweightedPeak(), false),
                                row("Unweighted rms", speed.unweightedRms(), false),
                                row("Wow rms, 0.2 to 6 Hz", speed.wowRms(), false),
                                row("Flutter rms, 6 to 200 Hz", speed.flutterRms(), false),
                                row("Floor of the weighted rms", speed.weightedFloor(), false))
                        .toList();
        return new DataTable("Speed, wow and flutter", List.of("Reading", "Figure"), rows);
    }

    private static List<String> row(String name, Quantity figure, boolean signed) {
        return List.of(name, Numbers.full(Find.figure(figure), signed));
    }
}
