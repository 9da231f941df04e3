package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.SpeedComponent;

/** The lines of the speed deviation in words and as a table. */
final class SpeedComponents {

    private SpeedComponents() {}

    /** What stands out, for the caption of the spectrum. */
    static String caption(List<SpeedComponent> components) {
        if (components.isEmpty()) {
            return "No single rate of wavering stands out.";
        }
        List<String> parts =
                components.stream().limit(SpeedCharts.LABELLED).map(SpeedComponents::told).toList();
        return "What stands out: " + Words.list(parts) + ". " + hint(components);
    }

    private static String hint(List<SpeedComponent> components) {
        return components.stream().anyMatch(c -> Words.isGiven(c.part()))
                ? "A line has the name of each part whose rate and movement it fits."
                : "A line that repeats at the rate of a rotating part points to that part; with the"
                        + " dimensions of the transport lines are named.";
    }

    private static String told(SpeedComponent c) {
        String what =
                Numbers.withUnit(Numbers.significant(c.peakPercent(), 2), "%")
                        + " at "
                        + Numbers.frequency(c.middleHz());
        return Words.isGiven(c.part()) ? what + " (" + c.part() + ")" : what;
    }

    /** Every line with its uncertainties. */
    static DataTable table(String what, List<SpeedComponent> components) {
        return new DataTable(
                what,
                List.of("Rate", "Peak", "Part", "Movement over the tone"),
                components.stream().map(SpeedComponents::row).toList());
    }

    private static List<String> row(SpeedComponent c) {
        return List.of(
                figure(c.frequencyHz(), "Hz", c.frequencyUncertaintyHz()),
                figure(c.peakPercent(), "%", c.peakUncertaintyPercent()),
                Words.isGiven(c.part()) ? c.part() : "not known",
                movement(c));
    }

    private static String movement(SpeedComponent c) {
        if (!c.moves()) {
            return "none seen";
        }
        String to = "to " + figure(c.endFrequencyHz(), "Hz", c.frequencyUncertaintyHz());
        return Words.isGiven(c.note()) ? to + ". " + c.note() : to;
    }

    private static String figure(double value, String unit, double uncertainty) {
        return Numbers.full(Quantity.known(value, unit, uncertainty), false);
    }

    /** The same as a file. */
    static CsvTable csv(List<SpeedComponent> components) {
        CsvTable table =
                new CsvTable(
                        "rate at the beginning (Hz)",
                        "rate at the end (Hz)",
                        "uncertainty of the rate k=2 (Hz)",
                        "peak deviation (%)",
                        "uncertainty of the peak k=2 (%)",
                        "change (Hz a minute)",
                        "part",
                        "note");
        components.forEach(c -> row(table, c));
        return table;
    }

    private static void row(CsvTable table, SpeedComponent c) {
        table.number(c.frequencyHz(), 6)
                .number(c.moves() ? c.endFrequencyHz() : (Double) c.frequencyHz(), 6)
                .number(c.frequencyUncertaintyHz(), 6)
                .number(c.peakPercent(), 6)
                .number(c.peakUncertaintyPercent(), 6)
                .number(c.moves() ? c.frequencyChangeHzPerMinute() : (Double) 0.0, 6)
                .text(c.part() == null ? "" : c.part())
                .text(c.note() == null ? "" : c.note())
                .end();
    }
}
