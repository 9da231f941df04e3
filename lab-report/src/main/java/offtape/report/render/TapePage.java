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

    private final TapeReading reading;

    private TapePage(TapeReading reading) {
        this.reading = reading;
    }

    static String of(TapeReading reading) {
        return new TapePage(reading).page();
    }

    private String page() {
        String title = reading.tape() == null ? "Calibration tape" : reading.tape();
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", "The tones of a calibration tape", "class", "sheet")
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
        sections.add(response());
        sections.add(new Section("tones", "The tones", TapeTables.tones(reading).open()));
        sections.add(notes());
        return Page.of(title + " – Offtape", opening, sections, List.of());
    }

    private String identity() {
        String speed =
                reading.tapeSpeedMmPerS() == null
                        ? "tape speed not stated"
                        : Numbers.significant(reading.tapeSpeedMmPerS() / 10, 4) + " cm/s";
        return Words.unbroken(
                "Read from "
                        + reading.recording()
                        + ", "
                        + speed
                        + constants("tape recorded to", reading.tapeEqualisation())
                        + constants("machine set to", reading.machineEqualisation())
                        + ".");
    }

    private static String constants(String what, String constants) {
        return constants == null ? "" : "; " + what + " " + TimeConstants.parse(constants).words();
    }

    private String finding() {
        return Words.unbroken(
                reading.tones().size()
                        + (reading.tones().size() == 1 ? " steady tone was" : " steady tones were")
                        + " found; "
                        + reading.series().matched()
                        + " of them "
                        + (reading.series().matched() == 1 ? "belongs" : "belong")
                        + " to "
                        + reading.series().name()
                        + ". Levels are against tone "
                        + reading.reference().tone()
                        + " ("
                        + Numbers.significant(reading.reference().frequencyHz(), 5)
                        + " Hz). "
                        + reading.reference().because());
    }

    private DataTable figures() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                row(
                        "Speed deviation",
                        true,
                        reading.speedDeviation(),
                        reading.speedFrom() == null ? DataTable.NOTHING : reading.speedFrom()));
        if (reading.speed() != null) {
            rows.add(
                    row(
                            "Wow and flutter, weighted peak",
                            false,
                            reading.speed().weightedPeak(),
                            "Tone " + reading.speedTone() + "."));
        }
        if (reading.channels() > 1) {
            rows.add(
                    row(
                            "Right channel re left",
                            true,
                            reading.channelDifference(),
                            "Level of the reference tone."));
            rows.add(
                    row(
                            "Right channel late by",
                            true,
                            reading.interchannelDelay(),
                            "All tones together."));
            rows.add(
                    row(
                            "Azimuth",
                            true,
                            reading.azimuth(),
                            "From that delay, positive if the right channel is late."));
        }
        return new DataTable("Headline figures", List.of("Figure", "Value", "Read from"), rows);
    }

    private static List<String> row(String what, boolean signed, Quantity figure, String from) {
        return List.of(what, Numbers.full(figure, signed), from);
    }

    private Section response() {
        Markup body = new Markup();
        if (reading.response().isEmpty()) {
            body.add(
                    Section.paragraph("The recording tells no response. The notes below say why."));
        } else {
            body.add(Section.figure(caption(), List.of(chart())));
            body.add(TapeTables.response(reading).folded());
        }
        return new Section("response", "Replay response", body);
    }

    private String caption() {
        return "Level of each tone against tone "
                + reading.responseZero().tone()
                + " ("
                + Numbers.significant(reading.responseZero().frequencyHz(), 5)
                + " Hz). "
                + reading.responseZero().because()
                + " Between the tones nothing was measured; the lines only lead the eye.";
    }

    private Chart chart() {
        List<Series> series = new ArrayList<>();
        for (TapeResponse r : reading.response()) {
            String who = Words.sentence(r.channel());
            boolean isCorrected = r.correctedDb() != null;
            series.add(
                    series(
                            isCorrected ? who + " as read" : who,
                            Look.of(r.channel(), isCorrected),
                            r,
                            r.asReadDb()));
            if (isCorrected) {
                series.add(
                        series(
                                who + " corrected",
                                Look.of(r.channel(), false),
                                r,
                                r.correctedDb()));
            }
        }
        double low = levels().min().orElse(0);
        double high = levels().max().orElse(0);
        return Chart.of(
                "tape-response",
                "Replay response from the tones",
                caption(),
                Axis.audioFrequency(20, 22_000),
                Axis.linear(
                        "Level, dB",
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
            body.add(Section.paragraph("Nothing in the recording calls for a remark."));
        } else {
            body.open("ul").line();
            reading.notes().forEach(n -> body.element("li", Words.unbroken(n)).line());
            body.close("ul").line();
        }
        return new Section("notes", "Notes", body);
    }
}
