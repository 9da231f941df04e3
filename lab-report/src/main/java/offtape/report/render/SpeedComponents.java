package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.SpeedComponent;

/**
 * The lines of the speed deviation in words and as a table.
 *
 * @param words in the reader's language
 */
record SpeedComponents(Wording words) {

    /** What stands out, for the caption of the spectrum. */
    String caption(List<SpeedComponent> components) {
        if (components.isEmpty()) {
            return words.say("speed.nothing-stands-out");
        }
        List<String> parts =
                components.stream().limit(SpeedCharts.LABELLED).map(this::told).toList();
        return words.say("speed.stands-out", words.list(parts)) + " " + hint(components);
    }

    private String hint(List<SpeedComponent> components) {
        return words.say(
                components.stream().anyMatch(c -> Wording.isGiven(c.part()))
                        ? "speed.lines-named"
                        : "speed.lines-unnamed");
    }

    private String told(SpeedComponent c) {
        String peak = Numbers.withUnit(words.significant(c.peakPercent(), 2), "%");
        String rate = words.frequency(c.middleHz());
        return Wording.isGiven(c.part())
                ? words.say("speed.line-of-part", peak, rate, words.told(c.part()))
                : words.say("speed.line", peak, rate);
    }

    /** Every line with its uncertainties. */
    DataTable table(String what, List<SpeedComponent> components) {
        return new DataTable(
                what,
                List.of(
                        words.say("speed.column-rate"),
                        words.say("speed.column-peak"),
                        words.say("speed.column-part"),
                        words.say("speed.column-movement")),
                components.stream().map(this::row).toList());
    }

    private List<String> row(SpeedComponent c) {
        return List.of(
                figure(c.frequencyHz(), "Hz", c.frequencyUncertaintyHz()),
                figure(c.peakPercent(), "%", c.peakUncertaintyPercent()),
                Wording.isGiven(c.part()) ? words.told(c.part()) : words.say("speed.part-unknown"),
                movement(c));
    }

    private String movement(SpeedComponent c) {
        if (!c.moves()) {
            return words.say("speed.movement-none");
        }
        String end = figure(c.endFrequencyHz(), "Hz", c.frequencyUncertaintyHz());
        return Wording.isGiven(c.note())
                ? words.say("speed.movement-noted", end, words.told(c.note()))
                : words.say("speed.movement", end);
    }

    private String figure(double value, String unit, double uncertainty) {
        return words.full(Quantity.known(value, unit, uncertainty), false);
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
