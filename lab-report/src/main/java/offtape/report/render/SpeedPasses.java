package offtape.report.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.PassLine;
import offtape.report.result.PassParts;
import offtape.report.result.Passes;
import offtape.report.result.Speed;

/** Several replays of one recording: their readings, and what of them lies on the tape. */
final class SpeedPasses {

    private static final String PERCENT = ", %";

    /** A reading and how it is called. */
    private record Reading(String name, Function<PassFigures, Quantity> of) {}

    private static final List<Reading> READINGS =
            List.of(
                    new Reading("Weighted peak", PassFigures::weightedPeak),
                    new Reading("Two sigma", PassFigures::weightedTwoSigma),
                    new Reading("Weighted rms", PassFigures::weightedRms),
                    new Reading("Unweighted peak", PassFigures::unweightedPeak),
                    new Reading("Unweighted rms", PassFigures::unweightedRms),
                    new Reading("Wow rms", PassFigures::wowRms),
                    new Reading("Flutter rms", PassFigures::flutterRms),
                    new Reading("American rms", PassFigures::americanRms));

    private SpeedPasses() {}

    /** What is to be said of the replays; nothing if there was one. */
    static Markup of(Speed speed) {
        Passes passes = speed.passes();
        if (passes == null) {
            return new Markup();
        }
        Markup out =
                new Markup()
                        .element("h3", "Replay by replay")
                        .line()
                        .add(Section.paragraph(introduction(speed)))
                        .add(readings(passes).open())
                        .element("h3", "What lies on the tape and what the replay adds")
                        .line();
        passes.notes().forEach(note -> out.add(Section.paragraph(note)));
        out.add(parts(passes).open());
        reasons(passes).forEach(reason -> out.add(Section.paragraph(reason)));
        return out.add(lines(passes).folded());
    }

    private static String introduction(Speed speed) {
        String text =
                "Record and replay waver by themselves and fall together differently each time, so a"
                        + " machine that recorded its own tape is replayed several times.";
        Quantity difference = speed.passDifference();
        if (difference == null || !difference.isKnown()) {
            return text;
        }
        return text
                + " The first replay ran at "
                + Numbers.full(difference, true)
                + " against the recording, provided one interface played and recorded; two sample"
                + " clocks may differ by up to 0.02 %.";
    }

    /** A row a reading, so that a few replays stand beside each other on any page. */
    private static DataTable readings(Passes passes) {
        List<Pass> replays = passes.readings();
        List<String> heads = new ArrayList<>(List.of("Reading"));
        replays.forEach(pass -> heads.add(pass.file()));
        heads.addAll(List.of("Highest", "Mean", "Spread"));
        List<List<String>> rows = new ArrayList<>();
        List<String> speeds = new ArrayList<>(List.of("Mean speed" + PERCENT));
        replays.forEach(pass -> speeds.add(number(pass.rate(), true)));
        speeds.addAll(Collections.nCopies(3, DataTable.NOTHING));
        rows.add(speeds);
        for (Reading reading : READINGS) {
            Stream<PassFigures> figures =
                    Stream.concat(
                            replays.stream().map(Pass::figures),
                            Stream.of(passes.highest(), passes.mean(), passes.spread()));
            rows.add(
                    Stream.concat(
                                    Stream.of(reading.name() + PERCENT),
                                    figures.map(f -> number(reading.of().apply(f), false)))
                            .toList());
        }
        return new DataTable("Readings of each replay; spread is highest less lowest", heads, rows);
    }

    private static String number(Quantity figure, boolean signed) {
        if (!figure.isKnown()) {
            return DataTable.NOTHING;
        }
        return signed ? Numbers.signed(figure.value(), 3) : Numbers.decimal(figure.value(), 4);
    }

    private static DataTable parts(Passes passes) {
        return new DataTable(
                "Parts of the wavering",
                List.of("Reading", "Written: repeats with the tape", "Read: added by a replay"),
                List.of(
                        part("Weighted rms", passes, PassParts::weightedRms),
                        part("Unweighted rms, 0.2 to 200 Hz", passes, PassParts::unweightedRms),
                        part("Wow rms, 0.2 to 6 Hz", passes, PassParts::wowRms),
                        part("Flutter rms, 6 to 200 Hz", passes, PassParts::flutterRms)));
    }

    private static List<String> part(
            String name, Passes passes, Function<PassParts, Quantity> figure) {
        return List.of(
                name, told(figure.apply(passes.written())), told(figure.apply(passes.read())));
    }

    private static String told(Quantity figure) {
        return figure.isKnown() ? Numbers.full(figure, false) : "not told";
    }

    /** Why the parts of the table that are not told are not, the weighted one's reason first. */
    private static List<String> reasons(Passes passes) {
        return Stream.of(passes.written(), passes.read())
                .flatMap(p -> Stream.of(p.weightedRms(), p.unweightedRms(), p.flutterRms()))
                .filter(q -> !q.isKnown())
                .map(q -> "Not told: " + q.reason())
                .limit(1)
                .toList();
    }

    private static DataTable lines(Passes passes) {
        return new DataTable(
                "lines in both parts",
                List.of("Rate", "Written, peak", "Read, peak"),
                passes.lines().stream().map(SpeedPasses::row).toList());
    }

    private static List<String> row(PassLine line) {
        return List.of(
                Numbers.frequency(line.frequencyHz()),
                told(line.writtenPeak()),
                told(line.readPeak()));
    }

    /** The same as a file: one row a replay, then the rows that sum them up. */
    static CsvTable csv(Speed speed) {
        List<String> heads = new ArrayList<>(List.of("row", "file", "mean speed (%)"));
        READINGS.forEach(r -> heads.add(r.name().toLowerCase(Locale.ROOT) + " (%)"));
        CsvTable table = new CsvTable(heads.toArray(String[]::new));
        Passes passes = speed == null ? null : speed.passes();
        if (passes == null) {
            return table;
        }
        for (Pass pass : passes.readings()) {
            row(table, "replay", pass.file(), pass.rate(), pass.figures());
        }
        Quantity none = Quantity.unknown("A row that sums up has no speed of its own.");
        row(table, "highest", "", none, passes.highest());
        row(table, "mean", "", none, passes.mean());
        row(table, "spread", "", none, passes.spread());
        row(table, "written", "", none, alone(passes.written(), none));
        row(table, "read", "", none, alone(passes.read(), none));
        return table;
    }

    private static PassFigures alone(PassParts parts, Quantity none) {
        return new PassFigures(
                none,
                none,
                parts.weightedRms(),
                none,
                parts.unweightedRms(),
                parts.wowRms(),
                parts.flutterRms(),
                none);
    }

    private static void row(
            CsvTable table, String name, String file, Quantity rate, PassFigures figures) {
        table.text(name).text(file).number(rate.value(), 5);
        READINGS.forEach(r -> table.number(r.of().apply(figures).value(), 5));
        table.end();
    }
}
