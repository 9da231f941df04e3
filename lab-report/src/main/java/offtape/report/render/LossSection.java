package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.report.headline.Find;
import offtape.report.result.LossAlternative;
import offtape.report.result.LossCause;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * What takes the highs away, as far as the response tells.
 *
 * @param words of the reader's language
 */
record LossSection(Wording words) {

    private static final int HEIGHT = 300;
    private static final double HIGH_HZ = 10_000;

    /** The causes that have names. */
    private static final Set<String> CAUSES =
            Set.of(
                    "spacing",
                    "gap",
                    "azimuth",
                    "gap-or-azimuth",
                    "thickness",
                    "equalisation",
                    "upper-edge");

    /** What takes less everywhere is not drawn. */
    private static final double DRAWN_DB = 0.2;

    /** Decimals of what a cause takes, as in the table. */
    private static final int TOLD_DECIMALS = 1;

    /** Whether a session looked for causes of loss. */
    static boolean hasContent(Results results) {
        return !results.losses().isEmpty();
    }

    /** The section. */
    Section of(Results results) {
        Markup body = Section.paragraph(words, words.say("loss.intro"));
        for (LossFit fit : results.losses()) {
            String channel = words.channel(fit.channel());
            body.element("h3", words.sentence(words.say("loss.channel", channel))).line();
            if (fit.frequencyHz().length > 0) {
                String caption = caption(fit);
                Chart chart = chart(results, fit, caption);
                body.add(Section.figure(words, caption, List.of(chart)));
                body.add(ChartTable.of(words, chart).folded(words));
            }
            fit.words().forEach(s -> body.add(Section.paragraph(words, words.told(s))));
            if (!fit.causes().isEmpty()) {
                body.add(causes(fit).open());
                body.add(alternatives(fit).folded(words));
                body.add(correlations(fit).folded(words));
            }
        }
        return new Section("losses", words.say("loss.heading"), body);
    }

    private String caption(LossFit fit) {
        return words.say(
                "loss.caption",
                words.channel(fit.channel()),
                Numbers.withUnit(words.decimal(fit.residual().value(), 2), "dB"));
    }

    private Chart chart(Results results, LossFit fit, String caption) {
        List<Series> series = new ArrayList<>();
        Optional<Response> measured = Find.quietResponse(results, fit.channel());
        double[] hz = fit.frequencyHz();
        measured.ifPresent(r -> series.add(measured(r, fit)));
        series.add(
                Series.of(words.say("loss.fitted"), Look.WHOLE, hz, fit.fittedDb(), TOLD_DECIMALS));
        fit.causes().stream()
                .filter(c -> Arrays.stream(c.shareDb()).anyMatch(d -> Math.abs(d) > DRAWN_DB))
                .forEach(
                        c ->
                                series.add(
                                        Series.of(
                                                called("loss.label-", c.cause()),
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
                        words.say("loss.title", words.channel(fit.channel())),
                        caption,
                        Axis.audioFrequency(words, 400, 20_000),
                        Axis.linear(
                                words.say("loss.axis-level"),
                                Math.max(-30, Math.min(-3, Math.floor(low) - 1)),
                                Math.min(15, Math.max(1, Math.ceil(high) + 1))),
                        series)
                .withHeight(HEIGHT);
    }

    private Series measured(Response r, LossFit fit) {
        double from = fit.frequencyHz()[0];
        double to = fit.frequencyHz()[fit.frequencyHz().length - 1];
        int[] kept =
                IntStream.range(0, r.frequencyHz().length)
                        .filter(i -> r.frequencyHz()[i] >= from && r.frequencyHz()[i] <= to)
                        .toArray();
        return Series.within(
                words.say("loss.measured"),
                Look.of(fit.channel(), false),
                Arrays.stream(kept).mapToDouble(i -> r.frequencyHz()[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> r.magnitudeDb()[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> r.uncertaintyDb()[i]).toArray(),
                ResponseSection.MOST_DECIMALS);
    }

    private DataTable causes(LossFit fit) {
        return new DataTable(
                words.say("loss.causes", words.channel(fit.channel())),
                List.of(
                        words.say("loss.head-cause"),
                        words.say("loss.head-found"),
                        words.say("loss.head-takes")),
                fit.causes().stream()
                        .map(c -> List.of(name(c.cause()), found(c), atHigh(fit, c)))
                        .toList());
    }

    private String found(LossCause c) {
        if (!c.quantity().isKnown()) {
            return words.told(c.quantity().reason());
        }
        String figure = words.full(c.quantity(), false);
        return c.detail() == null ? figure : figure + " (" + words.told(c.detail()) + ")";
    }

    private String atHigh(LossFit fit, LossCause c) {
        int best = 0;
        for (int i = 0; i < c.shareDb().length; i++) {
            double off = Math.abs(fit.frequencyHz()[i] - HIGH_HZ);
            best = off < Math.abs(fit.frequencyHz()[best] - HIGH_HZ) ? i : best;
        }
        return c.shareDb().length == 0 ? DataTable.NOTHING : words.signed(-c.shareDb()[best], 1);
    }

    private DataTable alternatives(LossFit fit) {
        return new DataTable(
                words.say("loss.alternatives", words.channel(fit.channel())),
                List.of(
                        words.say("loss.head-causes"),
                        words.say("loss.head-left-over"),
                        words.say("loss.head-above-best")),
                fit.alternatives().stream().map(this::alternative).toList());
    }

    private List<String> alternative(LossAlternative a) {
        return List.of(
                a.text().isEmpty()
                        ? words.say("loss.no-loss")
                        : words.sentence(words.told(a.text())),
                words.decimal(a.residualDb(), 3),
                words.decimal(a.excess(), 1));
    }

    private DataTable correlations(LossFit fit) {
        return new DataTable(
                words.say("loss.correlations", words.channel(fit.channel())),
                List.of(
                        words.say("loss.head-cause"),
                        words.say("loss.head-other-cause"),
                        words.say("loss.head-correlation")),
                fit.correlations().stream()
                        .map(
                                c ->
                                        List.of(
                                                name(c.one()),
                                                name(c.other()),
                                                words.signed(c.coefficient(), 3)))
                        .toList());
    }

    private String name(String cause) {
        return called("loss.name-", cause);
    }

    private String called(String beginning, String cause) {
        return CAUSES.contains(cause) ? words.say(beginning + cause) : cause;
    }
}
