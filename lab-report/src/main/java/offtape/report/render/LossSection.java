package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.report.headline.Find;
import offtape.report.result.LossAlternative;
import offtape.report.result.LossCause;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What takes the highs away, as far as the response tells. */
final class LossSection {

    private static final int HEIGHT = 300;
    private static final double HIGH_HZ = 10_000;

    private static final Map<String, String> NAMES =
            Map.of(
                    "spacing", "Space between tape and head",
                    "gap", "Gap of the head",
                    "azimuth", "Head askew (azimuth)",
                    "gap-or-azimuth", "Gap or azimuth",
                    "thickness", "Thickness of the magnetised layer",
                    "equalisation", "Wrong equalisation",
                    "upper-edge", "Amplifier's upper edge");

    /** Names that find room in a chart. */
    private static final Map<String, String> LABELS =
            Map.of(
                    "spacing", "Space",
                    "gap", "Gap",
                    "azimuth", "Azimuth",
                    "gap-or-azimuth", "Gap or azimuth",
                    "thickness", "Layer",
                    "equalisation", "Equalisation",
                    "upper-edge", "Amplifier");

    /** What takes less everywhere is not drawn. */
    private static final double DRAWN_DB = 0.2;

    /** Decimals of what a cause takes, as in the table. */
    private static final int TOLD_DECIMALS = 1;

    private LossSection() {}

    /** Whether a session looked for causes of loss. */
    static boolean hasContent(Results results) {
        return !results.losses().isEmpty();
    }

    /** The section. */
    static Section of(Results results) {
        Markup body =
                Section.paragraph(
                        "Highs are lost in ways whose laws are known: dirt between tape and head, a"
                                + " wide gap, a head that stands askew, an amplifier. Here they are"
                                + " fitted to the response of the quiet sweep. A cause is named only"
                                + " where the curve cannot do without it.");
        for (LossFit fit : results.losses()) {
            body.element("h3", Words.sentence(fit.channel()) + " channel").line();
            if (fit.frequencyHz().length > 0) {
                String caption = caption(fit);
                Chart chart = chart(results, fit, caption);
                body.add(Section.figure(caption, List.of(chart)));
                body.add(ChartTable.of(chart).folded());
            }
            fit.words().forEach(sentence -> body.add(Section.paragraph(sentence)));
            if (!fit.causes().isEmpty()) {
                body.add(causes(fit).open());
                body.add(alternatives(fit).folded());
                body.add(correlations(fit).folded());
            }
        }
        return new Section("losses", "Where the highs go", body);
    }

    private static String caption(LossFit fit) {
        return "The measured curve of the "
                + fit.channel()
                + " channel, the curve of the simplest causes that explain it, and what each of them"
                + " takes. What the fit leaves is "
                + Numbers.withUnit(Numbers.decimal(fit.residual().value(), 2), "dB")
                + " (root mean square).";
    }

    private static Chart chart(Results results, LossFit fit, String caption) {
        List<Series> series = new ArrayList<>();
        Optional<Response> measured = Find.quietResponse(results, fit.channel());
        double[] hz = fit.frequencyHz();
        measured.ifPresent(r -> series.add(measured(r, fit)));
        series.add(Series.of("Fitted", Look.WHOLE, hz, fit.fittedDb(), TOLD_DECIMALS));
        fit.causes().stream()
                .filter(c -> Arrays.stream(c.shareDb()).anyMatch(d -> Math.abs(d) > DRAWN_DB))
                .forEach(
                        c ->
                                series.add(
                                        Series.of(
                                                LABELS.getOrDefault(c.cause(), c.cause()),
                                                Look.of(fit.channel(), true),
                                                hz,
                                                c.shareDb(),
                                                TOLD_DECIMALS)));
        DoubleStream levels =
                Stream.concat(Stream.of(fit.fittedDb()), series.stream().map(Series::y))
                        .flatMapToDouble(Arrays::stream);
        double low = levels.min().orElse(0);
        double high = series.stream().flatMapToDouble(s -> Arrays.stream(s.y())).max().orElse(0);
        return Chart.of(
                        "losses-" + fit.channel(),
                        "What takes the highs away on the " + fit.channel() + " channel",
                        caption,
                        Axis.audioFrequency(400, 20_000),
                        Axis.linear(
                                "Level, dB re 1 kHz",
                                Math.max(-30, Math.min(-3, Math.floor(low) - 1)),
                                Math.min(15, Math.max(1, Math.ceil(high) + 1))),
                        series)
                .withHeight(HEIGHT);
    }

    private static Series measured(Response r, LossFit fit) {
        double from = fit.frequencyHz()[0];
        double to = fit.frequencyHz()[fit.frequencyHz().length - 1];
        int[] kept =
                IntStream.range(0, r.frequencyHz().length)
                        .filter(i -> r.frequencyHz()[i] >= from && r.frequencyHz()[i] <= to)
                        .toArray();
        return Series.within(
                "Measured",
                Look.of(fit.channel(), false),
                Arrays.stream(kept).mapToDouble(i -> r.frequencyHz()[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> r.magnitudeDb()[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> r.uncertaintyDb()[i]).toArray(),
                ResponseSection.MOST_DECIMALS);
    }

    private static DataTable causes(LossFit fit) {
        return new DataTable(
                "Causes of loss, " + fit.channel() + " channel",
                List.of("Cause", "Found", "Takes at 10 kHz, dB"),
                fit.causes().stream()
                        .map(
                                c ->
                                        List.of(
                                                name(c.cause()),
                                                c.quantity().isKnown()
                                                        ? Numbers.full(c.quantity(), false)
                                                                + (c.detail() == null
                                                                        ? ""
                                                                        : " (" + c.detail() + ")")
                                                        : c.quantity().reason(),
                                                atHigh(fit, c)))
                        .toList());
    }

    private static String atHigh(LossFit fit, LossCause c) {
        int best = 0;
        for (int i = 0; i < c.shareDb().length; i++) {
            double off = Math.abs(fit.frequencyHz()[i] - HIGH_HZ);
            best = off < Math.abs(fit.frequencyHz()[best] - HIGH_HZ) ? i : best;
        }
        return c.shareDb().length == 0 ? DataTable.NOTHING : Numbers.signed(-c.shareDb()[best], 1);
    }

    private static DataTable alternatives(LossFit fit) {
        return new DataTable(
                "the simplest sets of causes that explain the curve of the "
                        + fit.channel()
                        + " channel",
                List.of("Causes", "Left over, dB", "χ² above the best"),
                fit.alternatives().stream().map(LossSection::alternative).toList());
    }

    private static List<String> alternative(LossAlternative a) {
        return List.of(
                a.text().isEmpty() ? "No loss" : Words.sentence(a.text()),
                Numbers.decimal(a.residualDb(), 3),
                Numbers.decimal(a.excess(), 1));
    }

    private static DataTable correlations(LossFit fit) {
        return new DataTable(
                "how alike two causes look on the " + fit.channel() + " channel",
                List.of("Cause", "Other cause", "Correlation"),
                fit.correlations().stream()
                        .map(
                                c ->
                                        List.of(
                                                name(c.one()),
                                                name(c.other()),
                                                Numbers.signed(c.coefficient(), 3)))
                        .toList());
    }

    private static String name(String cause) {
        return NAMES.getOrDefault(cause, cause);
    }
}
