package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedFloors;
import offtape.report.result.WorstTenSeconds;

/** All readings of speed as lines for the terminal. */
final class SpeedWords {

    private static final int MOST_COMPONENTS = 6;

    /** What noise alone reads is told from here on, percent. */
    private static final double LEAST_FLOOR = 1e-5;

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
        lines.add(line("Speed deviation", Figures::signedValue, s.deviation(), null));
        lines.add(line("Drift", Figures::value, s.drift(), null));
        lines.add(
                line(
                        "Weighted, quasi-peak",
                        Figures::value,
                        s.weightedPeak(),
                        floor.weightedPeak()));
        lines.add(
                line(
                        "Weighted, two sigma",
                        Figures::value,
                        s.weightedTwoSigma(),
                        floor.weightedTwoSigma()));
        lines.add(
                line("Weighted, rms (WRMS)", Figures::value, s.weightedRms(), floor.weightedRms()));
        lines.add(
                line(
                        "American rms, 0.5-200",
                        Figures::value,
                        s.americanRms(),
                        floor.americanRms()));
        lines.add(
                line(
                        "Unweighted, quasi-peak",
                        Figures::value,
                        s.unweightedPeak(),
                        floor.unweightedPeak()));
        lines.add(
                line("Unweighted, rms", Figures::value, s.unweightedRms(), floor.unweightedRms()));
        lines.add(line("Wow, 0.2 to 6 Hz, rms", Figures::value, s.wowRms(), floor.wowRms()));
        lines.add(
                line("Flutter, 6-200 Hz, rms", Figures::value, s.flutterRms(), floor.flutterRms()));
        if (s.scrapeFlutter() != null) {
            lines.add(
                    line(
                            "Scrape flutter, rms",
                            Figures::value,
                            s.scrapeFlutter(),
                            floor.scrapeFlutter()));
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
                        line("Worst ten seconds", Figures::value, worst.weightedPeak(), null)
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
                        "Line at %8s Hz     %s",
                        Figures.number(c.frequencyHz(), c.frequencyUncertaintyHz()),
                        reading(Figures::value, peak(c)) + " peak");
        String moving =
                c.moves()
                        ? ", moving to "
                                + Figures.number(c.endFrequencyHz(), c.frequencyUncertaintyHz())
                                + " Hz"
                        : "";
        return line + moving + (c.part() == null ? "" : ": " + c.part());
    }

    private static Quantity peak(SpeedComponent c) {
        return Quantity.known(c.peakPercent(), "%", c.peakUncertaintyPercent());
    }

    private static String reading(Function<Quantity, String> number, Quantity q) {
        return number.apply(q) + " % " + Figures.uncertainty(q);
    }

    private static String floor(double percent) {
        return percent < LEAST_FLOOR
                ? "under " + PlainNumber.of(LEAST_FLOOR, 1)
                : PlainNumber.of(percent, 2);
    }

    /**
     * A reading.
     *
     * @param floor what noise alone would read, percent, or null
     */
    private static String line(
            String what, Function<Quantity, String> number, Quantity q, Double floor) {
        String text = q.isKnown() ? reading(number, q) : "unknown: " + q.reason();
        String noise = floor == null || !q.isKnown() ? "" : "  (noise alone: " + floor(floor) + ")";
        return String.format(Locale.ROOT, "%-23s %s%s", what, text, noise);
    }
}
