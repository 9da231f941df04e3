package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;

/** All readings of speed as lines for the terminal. */
final class SpeedWords {

    private static final int MOST_COMPONENTS = 6;

    private SpeedWords() {}

    static List<String> lines(Speed s) {
        List<String> lines = new ArrayList<>();
        lines.add(
                String.format(
                        Locale.ROOT,
                        "Tone                    %.0f Hz nominal",
                        s.toneFrequencyHz()));
        lines.add(line("Speed deviation", "%+.4f", s.deviation()));
        lines.add(line("Drift", "%.4f", s.drift()));
        lines.add(line("Weighted, quasi-peak", "%.4f", s.weightedPeak()));
        lines.add(line("Weighted, two sigma", "%.4f", s.weightedTwoSigma()));
        lines.add(line("Weighted, rms", "%.4f", s.weightedRms()));
        lines.add(line("Unweighted, quasi-peak", "%.4f", s.unweightedPeak()));
        lines.add(line("Unweighted, rms", "%.4f", s.unweightedRms()));
        lines.add(line("Wow, 0.2 to 6 Hz, rms", "%.4f", s.wowRms()));
        lines.add(line("Flutter, 6-200 Hz, rms", "%.4f", s.flutterRms()));
        lines.add(line("Floor of the recording", "%.5f", s.weightedFloor()));
        s.components().stream().limit(MOST_COMPONENTS).forEach(c -> lines.add(component(c)));
        return lines;
    }

    private static String component(SpeedComponent c) {
        String line =
                String.format(
                        Locale.ROOT,
                        "Line at %8.3f Hz     %.4f %% ± %.4f peak",
                        c.frequencyHz(),
                        c.peakPercent(),
                        c.peakUncertaintyPercent());
        String moving =
                c.moves()
                        ? String.format(Locale.ROOT, ", moving to %.3f Hz", c.endFrequencyHz())
                        : "";
        return line + moving + (c.part() == null ? "" : ": " + c.part());
    }

    private static String line(String what, String format, Quantity q) {
        String text =
                q.isKnown()
                        ? Figures.text(format + " %% ± %.4f", q.value(), q.uncertainty())
                        : "unknown: " + q.reason();
        return String.format(Locale.ROOT, "%-23s %s", what, text);
    }
}
