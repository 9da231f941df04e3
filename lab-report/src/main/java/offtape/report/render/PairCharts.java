package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** The curves of two sessions on top of each other. */
final class PairCharts {

    private PairCharts() {}

    /** A curve and the session it belongs to. */
    private record Dated<T>(T curve, boolean isBefore) {

        String label(String channel) {
            return Words.sentence(channel) + (isBefore ? " before" : " after");
        }
    }

    /** The response at the lowest sweep level of each session. */
    static Section response(Results before, Results after) {
        List<Dated<Response>> curves =
                both(before, after, Find::quietResponse).stream()
                        .filter(d -> d.curve().frequencyHz().length > 0)
                        .toList();
        List<Response> bare = curves.stream().map(Dated::curve).toList();
        if (curves.isEmpty()) {
            return section("response", "Frequency response", "Neither session holds a sweep.");
        }
        String caption =
                "The response of both sessions at their lowest sweep level; the line at −3 dB marks"
                        + " the edges. "
                        + moved(before, after, Headline.UPPER_EDGE);
        Chart chart =
                Chart.of(
                                "response-pair",
                                "Frequency response before and after",
                                caption,
                                ResponseSection.frequencyAxis(bare),
                                ResponseSection.levelAxis(bare),
                                curves.stream().map(PairCharts::series).toList())
                        .withRules(List.of(new Chart.Rule(-3, "−3 dB")));
        Markup body = Section.figure(caption, List.of(chart));
        List<String> heads = curves.stream().map(d -> d.label(d.curve().channel())).toList();
        body.add(ResponseTable.of(bare, heads).folded());
        return new Section("response", "Frequency response", body);
    }

    private static Series series(Dated<Response> dated) {
        Response r = dated.curve();
        return new Series(
                dated.label(r.channel()),
                Look.of(r.channel(), dated.isBefore()),
                r.frequencyHz(),
                r.magnitudeDb());
    }

    /** K3 against record level. */
    static Section distortion(Results before, Results after) {
        List<Dated<Distortion>> ladders =
                both(before, after, Find::toneLadder).stream()
                        .filter(d -> DistortionCharts.hasSteps(d.curve()))
                        .toList();
        List<Distortion> bare = ladders.stream().map(Dated::curve).toList();
        if (ladders.isEmpty()) {
            return section(
                    "distortion",
                    "Distortion and level",
                    "Neither session holds a ladder of tones.");
        }
        String caption =
                "The third harmonic against record level; further right is louder before the tape"
                        + " distorts. "
                        + moved(before, after, Headline.LEVEL_AT_K3);
        Chart chart =
                Chart.of(
                                "k3-pair",
                                "Third harmonic (K3) before and after",
                                caption,
                                DistortionCharts.recordAxis(bare),
                                DistortionCharts.k3Axis(bare),
                                ladders.stream()
                                        .map(
                                                d ->
                                                        DistortionCharts.k3Series(
                                                                d.curve(),
                                                                d.label(d.curve().channel()),
                                                                d.isBefore()))
                                        .toList())
                        .withRules(DistortionCharts.k3Rules());
        Markup body = Section.figure(caption, List.of(chart)).add(k3Table(ladders).folded());
        return new Section("distortion", "Distortion and level", body);
    }

    private static DataTable k3Table(List<Dated<Distortion>> ladders) {
        List<String> heads = new ArrayList<>(List.of("Record level, dB"));
        ladders.forEach(d -> heads.add(d.label(d.curve().channel()) + ", %"));
        List<List<String>> rows =
                ladders.stream()
                        .flatMap(d -> d.curve().steps().stream())
                        .map(LadderStep::recordLevelDb)
                        .distinct()
                        .sorted()
                        .map(level -> k3Row(ladders, level))
                        .toList();
        return new DataTable("K3 against record level", List.copyOf(heads), rows);
    }

    private static List<String> k3Row(List<Dated<Distortion>> ladders, double levelDb) {
        List<String> cells = new ArrayList<>(List.of(Numbers.signed(levelDb, 1)));
        for (Dated<Distortion> dated : ladders) {
            cells.add(
                    dated.curve().steps().stream()
                            .filter(s -> s.recordLevelDb() == levelDb && s.k3Percent() != null)
                            .findFirst()
                            .map(s -> Numbers.decimal(s.k3Percent(), 3))
                            .orElse(DataTable.NOTHING));
        }
        return List.copyOf(cells);
    }

    private static Section section(String id, String heading, String text) {
        return new Section(id, heading, Section.paragraph(text));
    }

    private static <T> List<Dated<T>> both(
            Results before, Results after, BiFunction<Results, String, Optional<T>> find) {
        return Stream.of(true, false)
                .flatMap(
                        isBefore ->
                                Find.CHANNELS.stream()
                                        .map(c -> find.apply(isBefore ? before : after, c))
                                        .flatMap(Optional::stream)
                                        .map(curve -> new Dated<>(curve, isBefore)))
                .toList();
    }

    /** How one headline figure moved, channel by channel. */
    private static String moved(Results before, Results after, String name) {
        Headline first = Headline.named(before, name);
        Headline second = Headline.named(after, name);
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < first.figures().size(); c++) {
            Quantity from = first.figures().get(c);
            Quantity to = second.figures().get(c);
            if (from.isKnown() && to.isKnown()) {
                parts.add(
                        "from "
                                + Numbers.value(from, first.signed())
                                + " to "
                                + Numbers.value(to, first.signed())
                                + " on the "
                                + Find.CHANNELS.get(c)
                                + " channel");
            }
        }
        return parts.isEmpty() ? "" : name + ": " + Words.list(parts) + ".";
    }
}
