package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.compare.PairWords;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * The curves of two sessions on top of each other.
 *
 * @param words in the reader's language
 * @param pair what the two are called
 * @param before the first session
 * @param after the second session
 */
record PairCharts(Wording words, PairWords pair, Results before, Results after) {

    /** Longer names are cut where a curve is labelled. */
    static final int MOST_LETTERS = 16;

    /** A curve and the session it belongs to. */
    private record Dated<T>(T curve, boolean isBefore) {}

    private String label(String channel, boolean isBefore) {
        String curve = words.sentence(words.channel(channel));
        if (!pair.areMachines()) {
            return words.say(isBefore ? "pair.curve-before" : "pair.curve-after", curve);
        }
        PairWords brief = pair.brief(MOST_LETTERS);
        return words.say("pair.curve-of", curve, isBefore ? brief.first() : brief.second());
    }

    /** The first session is drawn in the second look: thin, behind what holds now. */
    private Chart.Sides sides() {
        PairWords brief = pair.brief(MOST_LETTERS);
        return new Chart.Sides(brief.first(), brief.second());
    }

    /** The response at the lowest sweep level of each session. */
    Section response() {
        List<Dated<Response>> curves =
                both(Find::quietResponse).stream()
                        .filter(d -> d.curve().frequencyHz().length > 0)
                        .toList();
        List<Response> bare = curves.stream().map(Dated::curve).toList();
        if (curves.isEmpty()) {
            return section("response", words.say("pair.response"), words.say("pair.no-sweep"));
        }
        String caption = words.say("pair.response-caption") + " " + moved(Headline.UPPER_EDGE);
        Chart chart =
                Chart.of(
                                "response-pair",
                                words.say(
                                        pair.areMachines()
                                                ? "pair.response-machines"
                                                : "pair.response-served"),
                                caption,
                                ResponseSection.frequencyAxis(words, bare),
                                ResponseSection.levelAxis(words, bare),
                                curves.stream().map(this::series).toList())
                        .withRules(List.of(new Chart.Rule(-3, "−3 dB")))
                        .withSides(sides());
        Markup body = Section.figure(words, caption, List.of(chart));
        List<String> heads =
                curves.stream().map(d -> label(d.curve().channel(), d.isBefore())).toList();
        body.add(ResponseTable.of(words, bare, heads).folded(words));
        return new Section("response", words.say("pair.response"), body);
    }

    private Series series(Dated<Response> dated) {
        Response r = dated.curve();
        return ResponseSection.series(
                r, label(r.channel(), dated.isBefore()), Look.of(r.channel(), dated.isBefore()));
    }

    /** K3 against record level. */
    Section distortion() {
        List<Dated<Distortion>> ladders =
                both(Find::toneLadder).stream()
                        .filter(d -> DistortionCharts.hasSteps(d.curve()))
                        .toList();
        List<Distortion> bare = ladders.stream().map(Dated::curve).toList();
        if (ladders.isEmpty()) {
            return section("distortion", words.say("pair.distortion"), words.say("pair.no-ladder"));
        }
        String caption = words.say("pair.k3-caption") + " " + moved(Headline.LEVEL_AT_K3);
        Chart chart =
                Chart.of(
                                "k3-pair",
                                words.say(
                                        pair.areMachines() ? "pair.k3-machines" : "pair.k3-served"),
                                caption,
                                DistortionCharts.recordAxis(words, bare),
                                DistortionCharts.k3Axis(words, bare),
                                ladders.stream()
                                        .map(
                                                d ->
                                                        DistortionCharts.k3Series(
                                                                d.curve(),
                                                                label(
                                                                        d.curve().channel(),
                                                                        d.isBefore()),
                                                                d.isBefore()))
                                        .toList())
                        .withRules(DistortionCharts.k3Rules())
                        .withSides(sides());
        Markup body =
                Section.figure(words, caption, List.of(chart)).add(k3Table(ladders).folded(words));
        return new Section("distortion", words.say("pair.distortion"), body);
    }

    private DataTable k3Table(List<Dated<Distortion>> ladders) {
        List<String> heads = new ArrayList<>(List.of(words.say("pair.column-level")));
        ladders.forEach(
                d ->
                        heads.add(
                                words.say(
                                        "pair.column-percent",
                                        label(d.curve().channel(), d.isBefore()))));
        List<List<String>> rows =
                ladders.stream()
                        .flatMap(d -> d.curve().steps().stream())
                        .map(LadderStep::recordLevelDb)
                        .distinct()
                        .sorted()
                        .map(level -> k3Row(ladders, level))
                        .toList();
        return new DataTable(words.say("pair.k3-table"), List.copyOf(heads), rows);
    }

    private List<String> k3Row(List<Dated<Distortion>> ladders, double levelDb) {
        List<String> cells = new ArrayList<>(List.of(words.signed(levelDb, 1)));
        for (Dated<Distortion> dated : ladders) {
            cells.add(
                    dated.curve().steps().stream()
                            .filter(s -> s.recordLevelDb() == levelDb && s.k3Percent() != null)
                            .findFirst()
                            .map(s -> words.decimal(s.k3Percent(), 3))
                            .orElse(DataTable.NOTHING));
        }
        return List.copyOf(cells);
    }

    private Section section(String id, String heading, String text) {
        return new Section(id, heading, Section.paragraph(words, text));
    }

    private <T> List<Dated<T>> both(BiFunction<Results, String, Optional<T>> find) {
        return Stream.of(true, false)
                .flatMap(
                        isBefore ->
                                Find.CHANNELS.stream()
                                        .map(c -> find.apply(isBefore ? before : after, c))
                                        .flatMap(Optional::stream)
                                        .map(curve -> new Dated<>(curve, isBefore)))
                .toList();
    }

    /** One headline figure in both, channel by channel. */
    private String moved(String name) {
        Headline first = Headline.named(before, name);
        Headline second = Headline.named(after, name);
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < first.figures().size(); c++) {
            Quantity from = first.figures().get(c);
            Quantity to = second.figures().get(c);
            if (from.isKnown() && to.isKnown()) {
                parts.add(
                        moved(
                                words.value(from, first.signed()),
                                words.value(to, first.signed()),
                                Find.CHANNELS.get(c)));
            }
        }
        if (parts.isEmpty()) {
            return "";
        }
        String figure = words.told(name);
        return pair.areMachines()
                ? words.say(
                        "pair.moved-machines",
                        figure,
                        pair.first(),
                        pair.second(),
                        words.list(parts))
                : words.say("pair.moved-served", figure, words.list(parts));
    }

    private String moved(String from, String to, String channel) {
        return words.say(
                (pair.areMachines() ? "pair.against-" : "pair.from-to-") + channel, from, to);
    }
}
