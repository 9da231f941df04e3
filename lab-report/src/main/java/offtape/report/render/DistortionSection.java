package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Subject;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Results;

/**
 * How loud it can be recorded, and what happens on the way.
 *
 * @param words of the reader's language
 */
record DistortionSection(Wording words) {

    /** The section. */
    Section of(Results results, LimitLines limits) {
        Markup body =
                Section.paragraph(
                        words,
                        words.say(
                                Subject.of(results)
                                        .words("distortion.intro", "distortion.intro-interface")));
        DistortionCharts charts = new DistortionCharts(words);
        List<Distortion> tone = DistortionCharts.toneLadders(results);
        if (tone.stream().noneMatch(DistortionCharts::hasSteps)) {
            body.add(Section.paragraph(words, words.say("distortion.no-ladder")));
        } else {
            String caption = caption(results, tone);
            body.add(
                    Section.figure(
                            words,
                            caption,
                            List.of(
                                    charts.k3(results, limits, caption),
                                    charts.compression(results, caption))));
        }
        List<Distortion> treble = DistortionCharts.trebleLadders(results);
        if (treble.stream().anyMatch(DistortionCharts::hasSteps)) {
            String caption = trebleCaption(treble);
            body.add(Section.figure(words, caption, List.of(charts.saturation(treble, caption))));
        }
        body.add(new HarmonicsFigure(words).of(results));
        if (!results.distortion().isEmpty()) {
            body.add(levels(results).open());
        }
        results.distortion().forEach(d -> body.add(steps(d).withoutEmptyColumns().folded(words)));
        return new Section("distortion", words.say("distortion.heading"), body);
    }

    private String caption(Results results, List<Distortion> tone) {
        List<String> sentences = new ArrayList<>();
        List<String> reached =
                tone.stream()
                        .filter(d -> Find.figure(d.levelAtK3ThreePercent()).isKnown())
                        .map(
                                d ->
                                        words.say(
                                                "distortion.k3-reached",
                                                words.level(d.levelAtK3ThreePercent().value()),
                                                words.channel(d.channel())))
                        .toList();
        sentences.add(
                reached.isEmpty()
                        ? words.say("distortion.k3-unknown")
                        : words.say("distortion.k3-reaches", words.list(reached)));
        Optional<UsefulRange> range = UsefulRange.shared(results);
        sentences.add(
                range.map(
                                r ->
                                        words.say(
                                                "distortion.range",
                                                words.level(r.fromDb()),
                                                words.level(r.toDb())))
                        .orElseGet(() -> words.say("distortion.no-range")));
        return String.join(" ", sentences);
    }

    private String trebleCaption(List<Distortion> treble) {
        List<String> highest =
                treble.stream()
                        .filter(d -> Find.figure(d.saturationOutputLevel()).isKnown())
                        .map(
                                d ->
                                        words.say(
                                                "distortion.treble-highest",
                                                words.level(d.saturationOutputLevel().value()),
                                                words.channel(d.channel())))
                        .toList();
        String frequency = words.frequency(treble.get(0).frequencyHz());
        return highest.isEmpty()
                ? words.say("distortion.treble-unknown", frequency)
                : words.say("distortion.treble", frequency, words.list(highest));
    }

    private DataTable levels(Results results) {
        List<String> heads = new ArrayList<>(List.of(words.say("distortion.head-level")));
        results.distortion().forEach(d -> heads.add(who(d)));
        return new DataTable(
                words.say("distortion.levels"),
                List.copyOf(heads),
                List.of(
                        row(results, "distortion.row-record-1", Distortion::levelAtK3OnePercent),
                        row(results, "distortion.row-record-3", Distortion::levelAtK3ThreePercent),
                        row(
                                results,
                                "distortion.row-compression",
                                Distortion::levelAtCompressionOneDb),
                        row(
                                results,
                                "distortion.row-replay-1",
                                Distortion::maximumOutputLevelOnePercent),
                        row(results, "distortion.row-maximum", Distortion::maximumOutputLevel),
                        row(
                                results,
                                "distortion.row-saturation",
                                Distortion::saturationOutputLevel),
                        row(results, "distortion.row-slope", Distortion::k3Slope)));
    }

    private List<String> row(Results results, String key, Function<Distortion, Quantity> figure) {
        List<String> cells = new ArrayList<>(List.of(words.say(key)));
        results.distortion()
                .forEach(d -> cells.add(words.full(Find.figure(figure.apply(d)), true)));
        return List.copyOf(cells);
    }

    private String who(Distortion d) {
        return words.sentence(words.channel(d.channel())) + ", " + words.frequency(d.frequencyHz());
    }

    private DataTable steps(Distortion d) {
        return new DataTable(
                words.say(
                        "distortion.steps",
                        words.frequency(d.frequencyHz()),
                        words.channel(d.channel())),
                List.of(
                        words.say("distortion.head-record"),
                        words.say("distortion.head-replay"),
                        words.say("distortion.head-k2"),
                        words.say("distortion.head-k3"),
                        words.say("distortion.head-all"),
                        words.say("distortion.head-compression"),
                        words.say("distortion.head-floor"),
                        words.say("distortion.head-near-floor"),
                        words.say("distortion.head-left-out"),
                        words.say("distortion.head-interface")),
                d.steps().stream().map(this::step).toList());
    }

    private List<String> step(LadderStep s) {
        return List.of(
                words.signed(s.recordLevelDb(), 1),
                s.replayLevelDb() == null ? DataTable.NOTHING : words.signed(s.replayLevelDb(), 2),
                percent(s.k2Percent(), s.noise().k2BelowPercent()),
                k3(s),
                percent(s.thdPercent(), s.noise().thdBelowPercent()),
                s.compressionDb() == null ? DataTable.NOTHING : words.decimal(s.compressionDb(), 2),
                percent(s.k3FloorPercent(), null),
                yes(s.limitedByNoise() && s.k3FloorPercent() != null),
                yes(s.noise().leftOut()),
                yes(s.noise().limitedByInterface()));
    }

    private String yes(boolean is) {
        return is ? words.say("distortion.yes") : DataTable.NOTHING;
    }

    private String k3(LadderStep s) {
        Double uncertainty = s.noise().k3UncertaintyPercent();
        return s.k3Percent() == null || uncertainty == null
                ? percent(s.k3Percent(), s.noise().k3BelowPercent())
                : words.full(Quantity.known(s.k3Percent(), "%", uncertainty), false);
    }

    /** A share, or what it is below if noise hides it. */
    private String percent(Double value, Double below) {
        if (value == null) {
            return below == null ? DataTable.NOTHING : "<\u00a0" + percent(below, null);
        }
        return words.decimal(value, value < 0.1 ? 3 : 2);
    }
}
