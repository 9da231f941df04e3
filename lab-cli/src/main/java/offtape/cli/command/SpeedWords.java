package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedFloors;
import offtape.report.result.WorstTenSeconds;

/** All readings of speed as lines for the terminal. */
final class SpeedWords {

    private static final int MOST_COMPONENTS = 6;

    private SpeedWords() {}

    static List<String> lines(Speed s) {
        List<String> lines = new ArrayList<>();
        lines.add(
                String.format(
                        Locale.ROOT,
                        "Tone                    %.0f Hz nominal, %s from %s on",
                        s.toneFrequencyHz(),
                        span(s.seconds()),
                        span(s.fromSeconds())));
        SpeedFloors floor = s.floors();
        lines.add(line("Speed deviation", "%+.4f", s.deviation(), null));
        lines.add(line("Drift", "%.4f", s.drift(), null));
        lines.add(line("Weighted, quasi-peak", "%.4f", s.weightedPeak(), floor.weightedPeak()));
        lines.add(
                line(
                        "Weighted, two sigma",
                        "%.4f",
                        s.weightedTwoSigma(),
                        floor.weightedTwoSigma()));
        lines.add(line("Weighted, rms (WRMS)", "%.4f", s.weightedRms(), floor.weightedRms()));
        lines.add(line("American rms, 0.5-200", "%.4f", s.americanRms(), floor.americanRms()));
        lines.add(
                line("Unweighted, quasi-peak", "%.4f", s.unweightedPeak(), floor.unweightedPeak()));
        lines.add(line("Unweighted, rms", "%.4f", s.unweightedRms(), floor.unweightedRms()));
        lines.add(line("Wow, 0.2 to 6 Hz, rms", "%.4f", s.wowRms(), floor.wowRms()));
        lines.add(line("Flutter, 6-200 Hz, rms", "%.4f", s.flutterRms(), floor.flutterRms()));
        if (s.scrapeFlutter() != null) {
            lines.add(
                    line("Scrape flutter, rms", "%.4f", s.scrapeFlutter(), floor.scrapeFlutter()));
        }
        lines.addAll(worst(s));
        s.components().stream().limit(MOST_COMPONENTS).forEach(c -> lines.add(component(c)));
        s.notes().forEach(n -> lines.add("Note: " + n));
        return lines;
    }

    private static List<String> worst(Speed s) {
        WorstTenSeconds worst = s.worstTenSeconds();
        return worst == null
                ? List.of()
                : List.of(
                        line("Worst ten seconds", "%.4f", worst.weightedPeak(), null)
                                + " weighted quasi-peak, from "
                                + span(s.fromSeconds() + worst.fromSeconds())
                                + " on");
    }

    private static String span(double seconds) {
        if (seconds < 120) {
            return String.format(Locale.ROOT, "%.1f s", seconds);
        }
        long whole = Math.round(seconds);
        return whole < 3600
                ? String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60)
                : String.format(
                        Locale.ROOT,
                        "%d h %02d min %02d s",
                        whole / 3600,
                        whole / 60 % 60,
                        whole % 60);
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

    /**
     * A reading.
     *
     * @param floor what noise alone would read, percent, or null
     */
    private static String line(String what, String format, Quantity q, Double floor) {
        String text =
                q.isKnown()
                        ? Figures.text(format + " %% ± %.4f", q.value(), q.uncertainty())
                        : "unknown: " + q.reason();
        String noise =
                floor == null || !q.isKnown()
                        ? ""
                        : String.format(Locale.ROOT, "  (noise alone: %.5f)", floor);
        return String.format(Locale.ROOT, "%-23s %s%s", what, text, noise);
    }
}
