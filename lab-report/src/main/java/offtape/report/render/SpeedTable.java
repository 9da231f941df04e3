package offtape.report.render;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Speed;
import offtape.report.result.SpeedFloors;
import offtape.report.result.TransportSpeed;

/** The readings of speed as a table: as heard, and off tape the transport's own beside them. */
final class SpeedTable {

    private static final SpeedFloors NO_FLOORS =
            new SpeedFloors(null, null, null, null, null, null, null, null);

    private static final String CAPTION = "Speed, wow and flutter";

    private SpeedTable() {}

    /**
     * A reading.
     *
     * @param own the same of the transport itself, or null
     * @param floor what noise alone would read as heard, percent, or null
     */
    private record Row(String name, Quantity heard, Quantity own, Double floor, boolean signed) {

        String figure() {
            return Numbers.full(Find.figure(heard), signed);
        }

        String ownFigure() {
            if (own == null) {
                return DataTable.NOTHING;
            }
            return own.equals(heard) ? "the same" : Numbers.full(Find.figure(own), signed);
        }

        String noise() {
            return floor == null ? "–" : Numbers.significant(floor, 2);
        }
    }

    /** As heard in the return. */
    static DataTable heard(Speed speed) {
        return new DataTable(
                CAPTION,
                List.of("Reading", "Figure", "Noise alone, %"),
                rows(speed, null).map(r -> List.of(r.name(), r.figure(), r.noise())).toList());
    }

    /** Both side by side. */
    static DataTable both(Speed speed, TransportSpeed own) {
        return new DataTable(
                CAPTION,
                List.of(
                        "Reading",
                        "As heard in the return",
                        "The transport's own",
                        "Noise alone, %"),
                rows(speed, own)
                        .map(r -> List.of(r.name(), r.figure(), r.ownFigure(), r.noise()))
                        .toList());
    }

    private static Stream<Row> rows(Speed s, TransportSpeed own) {
        SpeedFloors floor = Objects.requireNonNullElse(s.floors(), NO_FLOORS);
        boolean both = own != null;
        return Stream.of(
                new Row("Mean deviation", s.deviation(), both ? own.deviation() : null, null, true),
                new Row(
                        "Drift, slower than 0.2 Hz",
                        s.drift(),
                        both ? own.drift() : null,
                        null,
                        false),
                new Row(
                        "Weighted peak (IEC 60386, DIN 45507)",
                        s.weightedPeak(),
                        both ? own.weightedPeak() : null,
                        floor.weightedPeak(),
                        false),
                new Row(
                        "Weighted, two sigma (AES6-2008)",
                        s.weightedTwoSigma(),
                        both ? own.weightedTwoSigma() : null,
                        floor.weightedTwoSigma(),
                        false),
                new Row(
                        "Weighted rms (Japanese practice, WRMS)",
                        s.weightedRms(),
                        both ? own.weightedRms() : null,
                        floor.weightedRms(),
                        false),
                new Row(
                        "Unweighted rms, 0.5 to 200 Hz (American practice)",
                        s.americanRms(),
                        both ? own.americanRms() : null,
                        floor.americanRms(),
                        false),
                new Row(
                        "Unweighted peak, 0.2 to 200 Hz",
                        s.unweightedPeak(),
                        both ? own.unweightedPeak() : null,
                        floor.unweightedPeak(),
                        false),
                new Row(
                        "Unweighted rms, 0.2 to 200 Hz",
                        s.unweightedRms(),
                        both ? own.unweightedRms() : null,
                        floor.unweightedRms(),
                        false),
                new Row(
                        "Wow rms, 0.2 to 6 Hz",
                        s.wowRms(),
                        both ? own.wowRms() : null,
                        floor.wowRms(),
                        false),
                new Row(
                        "Flutter rms, 6 to 200 Hz",
                        s.flutterRms(),
                        both ? own.flutterRms() : null,
                        floor.flutterRms(),
                        false),
                new Row(scrape(s), s.scrapeFlutter(), null, floor.scrapeFlutter(), false));
    }

    /** Its band depends on the tone. */
    private static String scrape(Speed s) {
        double[] band = s.scrapeBandHz();
        return band == null || band.length != 2
                ? "Scrape flutter rms, above 200 Hz"
                : "Scrape flutter rms, "
                        + Numbers.decimal(band[0], 0)
                        + " to "
                        + Numbers.decimal(band[1], 0)
                        + " Hz";
    }
}
