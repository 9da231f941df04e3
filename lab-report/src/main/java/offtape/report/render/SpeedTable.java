package offtape.report.render;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Speed;
import offtape.report.result.SpeedFloors;
import offtape.report.result.TransportSpeed;

/**
 * The readings of speed as a table: as heard, and off tape the transport's own beside them.
 *
 * @param words in the reader's language
 */
record SpeedTable(Wording words) {

    private static final SpeedFloors NO_FLOORS =
            new SpeedFloors(null, null, null, null, null, null, null, null);

    /**
     * A reading.
     *
     * @param own the same of the transport itself, or null
     * @param floor what noise alone would read as heard, percent, or null
     */
    private record Row(String name, Quantity heard, Quantity own, Double floor, boolean signed) {}

    private String figure(Row row) {
        return words.full(Find.figure(row.heard()), row.signed());
    }

    private String ownFigure(Row row) {
        if (row.own() == null) {
            return DataTable.NOTHING;
        }
        return row.own().equals(row.heard())
                ? words.say("speed.same")
                : words.full(Find.figure(row.own()), row.signed());
    }

    private String noise(Row row) {
        return row.floor() == null ? DataTable.NOTHING : words.significant(row.floor(), 2);
    }

    /** As heard in the return. */
    DataTable heard(Speed speed) {
        return new DataTable(
                words.say("speed.table"),
                List.of(
                        words.say("speed.column-reading"),
                        words.say("speed.column-figure"),
                        words.say("speed.column-noise")),
                rows(speed, null).map(r -> List.of(r.name(), figure(r), noise(r))).toList());
    }

    /** Both side by side. */
    DataTable both(Speed speed, TransportSpeed own) {
        return new DataTable(
                words.say("speed.table"),
                List.of(
                        words.say("speed.column-reading"),
                        words.say("speed.column-heard"),
                        words.say("speed.column-own"),
                        words.say("speed.column-noise")),
                rows(speed, own)
                        .map(r -> List.of(r.name(), figure(r), ownFigure(r), noise(r)))
                        .toList());
    }

    private Stream<Row> rows(Speed s, TransportSpeed own) {
        SpeedFloors floor = Objects.requireNonNullElse(s.floors(), NO_FLOORS);
        boolean both = own != null;
        return Stream.of(
                new Row(
                        words.say("speed.row-deviation"),
                        s.deviation(),
                        both ? own.deviation() : null,
                        null,
                        true),
                row("speed.row-drift", s.drift(), both ? own.drift() : null, null),
                row(
                        "speed.row-weighted-peak",
                        s.weightedPeak(),
                        both ? own.weightedPeak() : null,
                        floor.weightedPeak()),
                row(
                        "speed.row-two-sigma",
                        s.weightedTwoSigma(),
                        both ? own.weightedTwoSigma() : null,
                        floor.weightedTwoSigma()),
                row(
                        "speed.row-weighted-rms",
                        s.weightedRms(),
                        both ? own.weightedRms() : null,
                        floor.weightedRms()),
                row(
                        "speed.row-american-rms",
                        s.americanRms(),
                        both ? own.americanRms() : null,
                        floor.americanRms()),
                row(
                        "speed.row-unweighted-peak",
                        s.unweightedPeak(),
                        both ? own.unweightedPeak() : null,
                        floor.unweightedPeak()),
                row(
                        "speed.row-unweighted-rms",
                        s.unweightedRms(),
                        both ? own.unweightedRms() : null,
                        floor.unweightedRms()),
                row("speed.row-wow", s.wowRms(), both ? own.wowRms() : null, floor.wowRms()),
                row(
                        "speed.row-flutter",
                        s.flutterRms(),
                        both ? own.flutterRms() : null,
                        floor.flutterRms()),
                new Row(scrape(s), s.scrapeFlutter(), null, floor.scrapeFlutter(), false));
    }

    private Row row(String name, Quantity heard, Quantity own, Double floor) {
        return new Row(words.say(name), heard, own, floor, false);
    }

    /** Its band depends on the tone. */
    private String scrape(Speed s) {
        double[] band = s.scrapeBandHz();
        return band == null || band.length != 2
                ? words.say("speed.row-scrape")
                : words.say(
                        "speed.row-scrape-band",
                        words.decimal(band[0], 0),
                        words.decimal(band[1], 0));
    }
}
