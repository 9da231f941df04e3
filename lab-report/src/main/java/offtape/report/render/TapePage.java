package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import offtape.core.standard.TimeConstants;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;

/** The report on a calibration tape as an HTML page. */
final class TapePage {

    private final Wording words;
    private final TapeReading reading;

    private TapePage(Wording words, TapeReading reading) {
        this.words = words;
        this.reading = reading;
    }

    static String of(Wording words, TapeReading reading) {
        return new TapePage(words, reading).page();
    }

    private String page() {
        String title = reading.tape() == null ? words.say("tape.unnamed") : reading.tape();
        TapeTables tables = new TapeTables(words);
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", words.say("tape.sheet"), "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", identity(), "class", "identity")
                        .line()
                        .element("p", finding(), "class", "findings")
                        .close("header")
                        .line()
                        .add(figures().open());
        List<Section> sections = new ArrayList<>();
        sections.add(response(tables));
        sections.add(
                new Section(
                        "tones", words.say("tape.tones-heading"), tables.tones(reading).open()));
        sections.add(notes());
        return Page.of(words, words.say("tape.page-title", title), opening, sections, List.of());
    }

    private String identity() {
        String speed =
                reading.tapeSpeedMmPerS() == null
                        ? words.say("page.tape-speed-unknown")
                        : words.say(
                                "tape.speed", words.significant(reading.tapeSpeedMmPerS() / 10, 4));
        List<String> parts =
                new ArrayList<>(List.of(words.say("tape.read-from", reading.recording(), speed)));
        if (reading.tapeEqualisation() != null) {
            parts.add(words.say("tape.recorded-to", constants(reading.tapeEqualisation())));
        }
        if (reading.machineEqualisation() != null) {
            parts.add(words.say("tape.machine-set-to", constants(reading.machineEqualisation())));
        }
        return words.unbroken(String.join("; ", parts) + ".");
    }

    private String constants(String constants) {
        return words.told(TimeConstants.parse(constants).words());
    }

    private String finding() {
        int found = reading.tones().size();
        int matched = reading.series().matched();
        return words.unbroken(
                words.say(found == 1 ? "tape.found-one" : "tape.found", found)
                        + " "
                        + words.say(
                                matched == 1 ? "tape.matched-one" : "tape.matched",
                                matched,
                                words.told(reading.series().name()))
                        + " "
                        + words.say(
                                "tape.reference",
                                reading.reference().tone(),
                                words.significant(reading.reference().frequencyHz(), 5))
                        + " "
                        + words.told(reading.reference().because()));
    }

    private DataTable figures() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                row(
                        "tape.figure-deviation",
                        true,
                        reading.speedDeviation(),
                        reading.speedFrom() == null
                                ? DataTable.NOTHING
                                : words.told(reading.speedFrom())));
        if (reading.speed() != null) {
            rows.add(
                    row(
                            "tape.figure-wow",
                            false,
                            reading.speed().weightedPeak(),
                            words.say("tape.from-tone", reading.speedTone())));
        }
        if (reading.channels() > 1) {
            rows.add(
                    row(
                            "tape.figure-difference",
                            true,
                            reading.channelDifference(),
                            words.say("tape.from-reference")));
            rows.add(
                    row(
                            "tape.figure-delay",
                            true,
                            reading.interchannelDelay(),
                            words.say("tape.from-all")));
            rows.add(
                    row(
                            "tape.figure-azimuth",
                            true,
                            reading.azimuth(),
                            words.say("tape.from-delay")));
        }
        return new DataTable(
                words.say("tape.figures"),
                List.of(
                        words.say("tape.figures-figure"),
                        words.say("tape.figures-value"),
                        words.say("tape.figures-from")),
                rows);
    }

    private List<String> row(String key, boolean signed, Quantity figure, String from) {
        return List.of(words.say(key), words.full(figure, signed), from);
    }

    private Section response(TapeTables tables) {
        Markup body = new Markup();
        if (reading.response().isEmpty()) {
            body.add(Section.paragraph(words, words.say("tape.no-response")));
        } else {
            body.add(Section.figure(words, caption(), List.of(chart())));
            body.add(tables.response(reading).folded(words));
        }
        return new Section("response", words.say("tape.response-heading"), body);
    }

    private String caption() {
        return words.say(
                        "tape.caption-zero",
                        reading.responseZero().tone(),
                        words.significant(reading.responseZero().frequencyHz(), 5))
                + " "
                + words.told(reading.responseZero().because())
                + " "
                + words.say("tape.caption-between");
    }

    private Chart chart() {
        List<Series> series = new ArrayList<>();
        for (TapeResponse r : reading.response()) {
            String who = words.sentence(words.channel(r.channel()));
            boolean isCorrected = r.correctedDb() != null;
            series.add(
                    series(
                            isCorrected ? words.say("tape.curve-as-read", who) : who,
                            Look.of(r.channel(), isCorrected),
                            r,
                            r.asReadDb()));
            if (isCorrected) {
                series.add(
                        series(
                                words.say("tape.curve-corrected", who),
                                Look.of(r.channel(), false),
                                r,
                                r.correctedDb()));
            }
        }
        double low = levels().min().orElse(0);
        double high = levels().max().orElse(0);
        return Chart.of(
                "tape-response",
                words.say("tape.response-title"),
                caption(),
                Axis.audioFrequency(words, 20, 22_000),
                Axis.linear(
                        words.say("tape.axis-level"),
                        Math.max(-40, Math.min(-5, 5 * Math.floor((low - 1) / 5))),
                        Math.min(20, Math.max(5, 5 * Math.ceil((high + 1) / 5)))),
                series);
    }

    private static Series series(String label, Look look, TapeResponse r, double[] db) {
        return Series.within(
                label, look, r.frequencyHz(), db, r.uncertaintyDb(), ResponseSection.MOST_DECIMALS);
    }

    private DoubleStream levels() {
        return reading.response().stream()
                .flatMapToDouble(
                        r ->
                                DoubleStream.concat(
                                        Arrays.stream(r.asReadDb()),
                                        r.correctedDb() == null
                                                ? DoubleStream.empty()
                                                : Arrays.stream(r.correctedDb())));
    }

    private Section notes() {
        Markup body = new Markup();
        if (reading.notes().isEmpty()) {
            body.add(Section.paragraph(words, words.say("tape.no-notes")));
        } else {
            body.open("ul").line();
            reading.notes().forEach(n -> body.element("li", words.unbroken(words.told(n))).line());
            body.close("ul").line();
        }
        return new Section("notes", words.say("tape.notes-heading"), body);
    }
}
