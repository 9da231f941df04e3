package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.report.headline.Subject;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * Distortion over frequency, from the harmonics of the sweep.
 *
 * @param words of the reader's language
 */
record HarmonicsFigure(Wording words) {

    private static final int HEIGHT = 280;

    /** Digits of a harmonic if nothing says how well it is known. */
    private static final int UNKNOWN_DIGITS = 2;

    /** The figure and its table; nothing if no harmonic was looked for. */
    Markup of(Results results) {
        List<Curve> curves =
                results.response().stream()
                        .flatMap(r -> r.harmonics().stream().map(h -> new Curve(r, h)))
                        .toList();
        if (curves.isEmpty()) {
            return new Markup();
        }
        Markup out = new Markup();
        List<Curve> heard = curves.stream().filter(Curve::isHeard).toList();
        double levelDb = curves.get(0).response().levelDb();
        if (heard.isEmpty()) {
            out.add(
                    Section.paragraph(
                            words,
                            words.say(
                                    "distortion.no-harmonic",
                                    new ResponseWords(words).level(levelDb))));
        } else {
            String caption = caption(levelDb, Subject.of(results));
            out.add(Section.figure(words, caption, List.of(chart(heard, caption))));
        }
        return out.add(table(curves).folded(words));
    }

    private record Curve(Response response, HarmonicCurve harmonic) {

        boolean isHeard() {
            return harmonic.points().stream().anyMatch(HarmonicCurve.Point::standsOut);
        }

        DoubleStream percents() {
            return harmonic.points().stream()
                    .filter(HarmonicCurve.Point::standsOut)
                    .mapToDouble(HarmonicCurve.Point::percent);
        }

        /** {@code Left K3}. */
        String name(Wording words) {
            return words.sentence(words.channel(response.channel())) + " K" + harmonic.order();
        }

        Series series(String name) {
            List<HarmonicCurve.Point> points =
                    harmonic.points().stream().filter(HarmonicCurve.Point::standsOut).toList();
            return new Series(
                    name,
                    Look.of(response.channel(), harmonic.order() == 2),
                    points.stream().mapToDouble(HarmonicCurve.Point::frequencyHz).toArray(),
                    points.stream().mapToDouble(HarmonicCurve.Point::percent).toArray(),
                    points.stream().mapToInt(Curve::decimals).toArray());
        }

        private static int decimals(HarmonicCurve.Point point) {
            return point.uncertaintyPercent() == null
                    ? Numbers.decimals(point.percent(), UNKNOWN_DIGITS)
                    : Numbers.decimals(point.uncertaintyPercent());
        }
    }

    private String caption(double levelDb, Subject subject) {
        String where = words.say("distortion.harmonics", new ResponseWords(words).level(levelDb));
        return subject == Subject.MACHINE
                ? where + " " + words.say("distortion.harmonics-whose")
                : where;
    }

    private Chart chart(List<Curve> heard, String caption) {
        double low = heard.stream().flatMapToDouble(Curve::percents).min().orElseThrow();
        double high = heard.stream().flatMapToDouble(Curve::percents).max().orElseThrow();
        return Chart.of(
                        "harmonics-chart",
                        words.say("distortion.harmonics-title"),
                        caption,
                        Axis.audioFrequency(words, 20, 20_000),
                        Axis.oneThree(
                                words.say("distortion.axis-harmonic"),
                                Math.max(0.003, Math.min(0.1, low / 1.5)),
                                Math.min(100, Math.max(3, high * 1.3))),
                        heard.stream().map(c -> c.series(c.name(words))).toList())
                .withHeight(HEIGHT);
    }

    private DataTable table(List<Curve> curves) {
        List<String> heads = new ArrayList<>(List.of(words.say("distortion.head-fundamental")));
        curves.forEach(c -> heads.add(c.name(words) + ", %"));
        List<List<String>> rows =
                curves.stream()
                        .flatMap(c -> c.harmonic().points().stream())
                        .map(HarmonicCurve.Point::frequencyHz)
                        .distinct()
                        .sorted()
                        .map(hz -> row(curves, hz))
                        .toList();
        return new DataTable(words.say("distortion.harmonics-table"), List.copyOf(heads), rows);
    }

    private List<String> row(List<Curve> curves, double hz) {
        return Stream.concat(Stream.of(words.frequency(hz)), curves.stream().map(c -> cell(c, hz)))
                .toList();
    }

    private String cell(Curve curve, double hz) {
        return curve.harmonic().points().stream()
                .filter(p -> p.frequencyHz() == hz)
                .findFirst()
                .map(
                        p ->
                                p.standsOut()
                                        ? words.significant(p.percent(), 3)
                                        : "< " + words.significant(4 * p.floorPercent(), 2))
                .orElse(DataTable.NOTHING);
    }
}
