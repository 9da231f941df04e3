package offtape.report.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.PassLine;
import offtape.report.result.PassParts;
import offtape.report.result.Passes;
import offtape.report.result.Speed;

/**
 * Several replays of one recording: their readings, and what of them lies on the tape.
 *
 * @param words in the reader's language
 */
record SpeedPasses(Wording words) {

    private static final String PERCENT = ", %";

    /**
     * A reading.
     *
     * @param key of what a page calls it
     * @param column what heads it in a file
     */
    private record Reading(String key, String column, Function<PassFigures, Quantity> of) {}

    private static final List<Reading> READINGS =
            List.of(
                    new Reading(
                            "speed.pass-weighted-peak", "weighted peak", PassFigures::weightedPeak),
                    new Reading("speed.pass-two-sigma", "two sigma", PassFigures::weightedTwoSigma),
                    new Reading(
                            "speed.pass-weighted-rms", "weighted rms", PassFigures::weightedRms),
                    new Reading(
                            "speed.pass-unweighted-peak",
                            "unweighted peak",
                            PassFigures::unweightedPeak),
                    new Reading(
                            "speed.pass-unweighted-rms",
                            "unweighted rms",
                            PassFigures::unweightedRms),
                    new Reading("speed.pass-wow", "wow rms", PassFigures::wowRms),
                    new Reading("speed.pass-flutter", "flutter rms", PassFigures::flutterRms),
                    new Reading(
                            "speed.pass-american-rms", "american rms", PassFigures::americanRms));

    /** What is to be said of the replays; nothing if there was one. */
    Markup of(Speed speed) {
        Passes passes = speed.passes();
        if (passes == null) {
            return new Markup();
        }
        Markup out =
                new Markup()
                        .element("h3", words.say("speed.passes-heading"))
                        .line()
                        .add(Section.paragraph(words, introduction(speed)))
                        .add(readings(passes).open())
                        .element("h3", words.say("speed.parts-heading"))
                        .line();
        passes.notes().forEach(note -> out.add(Section.paragraph(words, words.told(note))));
        out.add(parts(passes).open());
        reasons(passes).forEach(reason -> out.add(Section.paragraph(words, reason)));
        return out.add(lines(passes).folded(words));
    }

    private String introduction(Speed speed) {
        String text = words.say("speed.passes-introduction");
        Quantity difference = speed.passDifference();
        if (difference == null || !difference.isKnown()) {
            return text;
        }
        return text + " " + words.say("speed.passes-difference", words.full(difference, true));
    }

    /** A row a reading, so that a few replays stand beside each other on any page. */
    private DataTable readings(Passes passes) {
        List<Pass> replays = passes.readings();
        List<String> heads = new ArrayList<>(List.of(words.say("speed.column-reading")));
        replays.forEach(pass -> heads.add(pass.file()));
        heads.addAll(
                List.of(
                        words.say("speed.column-pass-highest"),
                        words.say("speed.column-pass-mean"),
                        words.say("speed.column-pass-spread")));
        List<List<String>> rows = new ArrayList<>();
        List<String> speeds =
                new ArrayList<>(List.of(words.say("speed.pass-mean-speed") + PERCENT));
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
                                    Stream.of(words.say(reading.key()) + PERCENT),
                                    figures.map(f -> number(reading.of().apply(f), false)))
                            .toList());
        }
        return new DataTable(words.say("speed.passes-table"), heads, rows);
    }

    private String number(Quantity figure, boolean signed) {
        if (!figure.isKnown()) {
            return DataTable.NOTHING;
        }
        return signed ? words.signed(figure.value(), 3) : words.decimal(figure.value(), 4);
    }

    private DataTable parts(Passes passes) {
        return new DataTable(
                words.say("speed.parts-table"),
                List.of(
                        words.say("speed.column-reading"),
                        words.say("speed.column-written"),
                        words.say("speed.column-read")),
                List.of(
                        part("speed.pass-weighted-rms", passes, PassParts::weightedRms),
                        part("speed.row-unweighted-rms", passes, PassParts::unweightedRms),
                        part("speed.row-wow", passes, PassParts::wowRms),
                        part("speed.row-flutter", passes, PassParts::flutterRms)));
    }

    private List<String> part(String key, Passes passes, Function<PassParts, Quantity> figure) {
        return List.of(
                words.say(key),
                told(figure.apply(passes.written())),
                told(figure.apply(passes.read())));
    }

    private String told(Quantity figure) {
        return figure.isKnown() ? words.full(figure, false) : words.say("speed.not-told");
    }

    /** Why the parts of the table that are not told are not, the weighted one's reason first. */
    private List<String> reasons(Passes passes) {
        return Stream.of(passes.written(), passes.read())
                .flatMap(p -> Stream.of(p.weightedRms(), p.unweightedRms(), p.flutterRms()))
                .filter(q -> !q.isKnown())
                .map(q -> words.say("speed.not-told-reason", words.told(q.reason())))
                .limit(1)
                .toList();
    }

    private DataTable lines(Passes passes) {
        return new DataTable(
                words.say("speed.parts-lines"),
                List.of(
                        words.say("speed.column-rate"),
                        words.say("speed.column-written-peak"),
                        words.say("speed.column-read-peak")),
                passes.lines().stream().map(this::row).toList());
    }

    private List<String> row(PassLine line) {
        return List.of(
                words.frequency(line.frequencyHz()),
                told(line.writtenPeak()),
                told(line.readPeak()));
    }

    /** The same as a file: one row a replay, then the rows that sum them up. */
    static CsvTable csv(Speed speed) {
        List<String> heads = new ArrayList<>(List.of("row", "file", "mean speed (%)"));
        READINGS.forEach(r -> heads.add(r.column() + " (%)"));
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
