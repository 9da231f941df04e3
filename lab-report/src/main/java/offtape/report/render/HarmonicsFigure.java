package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.report.headline.Subject;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Distortion over frequency, from the harmonics of the sweep. */
final class HarmonicsFigure {

    private static final int HEIGHT = 280;

    /** Digits of a harmonic if nothing says how well it is known. */
    private static final int UNKNOWN_DIGITS = 2;

    private HarmonicsFigure() {}

    /** The figure and its table; nothing if no harmonic was looked for. */
    static Markup of(Results results) {
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
                            "No harmonic of the sweep at "
                                    + ResponseSection.shortLevel(levelDb)
                                    + " stands above the noise."));
        } else {
            String caption = caption(levelDb, Subject.of(results));
            out.add(Section.figure(caption, List.of(chart(heard, caption))));
        }
        return out.add(table(curves).folded());
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

        String name() {
            return Words.sentence(response.channel()) + " K" + harmonic.order();
        }

        Series series() {
            List<HarmonicCurve.Point> points =
                    harmonic.points().stream().filter(HarmonicCurve.Point::standsOut).toList();
            return new Series(
                    name(),
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

    private static String caption(double levelDb, Subject subject) {
        return "Second (K2) and third harmonic (K3) of the sweep at "
                + ResponseSection.shortLevel(levelDb)
                + " over the frequency of the tone that makes them, where they stand four times"
                + " above the noise."
                + subject.words(
                        " K3 is the tape's; K2 belongs to a magnetised head or to the electronics.",
                        "");
    }

    private static Chart chart(List<Curve> heard, String caption) {
        double low = heard.stream().flatMapToDouble(Curve::percents).min().orElseThrow();
        double high = heard.stream().flatMapToDouble(Curve::percents).max().orElseThrow();
        return Chart.of(
                        "harmonics-chart",
                        "Harmonics of the sweep against frequency",
                        caption,
                        Axis.audioFrequency(20, 20_000),
                        Axis.oneThree(
                                "Harmonic, %",
                                Math.max(0.003, Math.min(0.1, low / 1.5)),
                                Math.min(100, Math.max(3, high * 1.3))),
                        heard.stream().map(Curve::series).toList())
                .withHeight(HEIGHT);
    }

    private static DataTable table(List<Curve> curves) {
        List<String> heads = new ArrayList<>(List.of("Fundamental"));
        curves.forEach(c -> heads.add(c.name() + ", %"));
        List<List<String>> rows =
                curves.stream()
                        .flatMap(c -> c.harmonic().points().stream())
                        .map(HarmonicCurve.Point::frequencyHz)
                        .distinct()
                        .sorted()
                        .map(hz -> row(curves, hz))
                        .toList();
        return new DataTable(
                "harmonics of the sweep (< : under four times its floor)",
                List.copyOf(heads),
                rows);
    }

    private static List<String> row(List<Curve> curves, double hz) {
        return Stream.concat(
                        Stream.of(Numbers.frequency(hz)), curves.stream().map(c -> cell(c, hz)))
                .toList();
    }

    private static String cell(Curve curve, double hz) {
        return curve.harmonic().points().stream()
                .filter(p -> p.frequencyHz() == hz)
                .findFirst()
                .map(
                        p ->
                                p.standsOut()
                                        ? Numbers.significant(p.percent(), 3)
                                        : "< " + Numbers.significant(4 * p.floorPercent(), 2))
                .orElse(DataTable.NOTHING);
    }
}
