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

/** How loud it can be recorded, and what happens on the way. */
final class DistortionSection {

    private DistortionSection() {}

    /** The section. */
    static Section of(Results results, LimitLines limits) {
        Markup body =
                Section.paragraph(
                        Subject.of(results)
                                .words(
                                        "How loud can it be recorded? Tape adds a third harmonic (K3)"
                                                + " long before it stops getting louder; later it compresses,"
                                                + " which means that what comes back grows less than what"
                                                + " goes in.",
                                        "What does the interface add to a tone? Its harmonics limit what"
                                                + " can be told of a machine behind it."));
        List<Distortion> tone = DistortionCharts.toneLadders(results);
        if (tone.stream().noneMatch(DistortionCharts::hasSteps)) {
            body.add(Section.paragraph("No ladder of tones was found in this recording."));
        } else {
            String caption = caption(results, tone);
            body.add(
                    Section.figure(
                            caption,
                            List.of(
                                    DistortionCharts.k3(results, limits, caption),
                                    DistortionCharts.compression(results, caption))));
        }
        List<Distortion> treble = DistortionCharts.trebleLadders(results);
        if (treble.stream().anyMatch(DistortionCharts::hasSteps)) {
            String caption = trebleCaption(treble);
            body.add(
                    Section.figure(caption, List.of(DistortionCharts.saturation(treble, caption))));
        }
        body.add(HarmonicsFigure.of(results));
        if (!results.distortion().isEmpty()) {
            body.add(levels(results).open());
        }
        results.distortion().forEach(d -> body.add(steps(d).withoutEmptyColumns().folded()));
        return new Section("distortion", "Distortion and level", body);
    }

    private static String caption(Results results, List<Distortion> tone) {
        List<String> sentences = new ArrayList<>();
        List<String> reached =
                tone.stream()
                        .filter(d -> Find.figure(d.levelAtK3ThreePercent()).isKnown())
                        .map(
                                d ->
                                        "at "
                                                + Numbers.level(d.levelAtK3ThreePercent().value())
                                                + " on the "
                                                + d.channel()
                                                + " channel")
                        .toList();
        sentences.add(
                reached.isEmpty()
                        ? "Where K3 reaches 3 % could not be told."
                        : "K3 reaches 3 % " + Words.list(reached) + ".");
        Optional<UsefulRange> range = UsefulRange.shared(results);
        sentences.add(
                range.map(
                                r ->
                                        "The shaded useful range, from K3 = 1 % to 1 dB of"
                                                + " compression on both channels, goes from "
                                                + r.words()
                                                + ".")
                        .orElse(
                                "No useful range is shaded: where K3 reaches 1 % and where"
                                        + " compression reaches 1 dB are not both known, or leave"
                                        + " nothing between them that the channels share."));
        return String.join(" ", sentences);
    }

    private static String trebleCaption(List<Distortion> treble) {
        List<String> highest =
                treble.stream()
                        .filter(d -> Find.figure(d.saturationOutputLevel()).isKnown())
                        .map(
                                d ->
                                        Numbers.level(d.saturationOutputLevel().value())
                                                + " on the "
                                                + d.channel()
                                                + " channel")
                        .toList();
        String frequency = Numbers.frequency(treble.get(0).frequencyHz());
        return highest.isEmpty()
                ? "What comes back of a " + frequency + " tone; its highest level is not known."
                : "However hard it is driven, a tone of "
                        + frequency
                        + " comes back no louder than "
                        + Words.list(highest)
                        + ".";
    }

    private static DataTable levels(Results results) {
        List<String> heads = new ArrayList<>(List.of("Level"));
        results.distortion().forEach(d -> heads.add(who(d)));
        return new DataTable(
                "Levels re reference",
                List.copyOf(heads),
                List.of(
                        row(results, "Record level at 1 % K3", Distortion::levelAtK3OnePercent),
                        row(results, "Record level at 3 % K3", Distortion::levelAtK3ThreePercent),
                        row(
                                results,
                                "Record level at 1 dB compression",
                                Distortion::levelAtCompressionOneDb),
                        row(
                                results,
                                "Replay level at 1 % K3",
                                Distortion::maximumOutputLevelOnePercent),
                        row(
                                results,
                                "Maximum output level (replay level at 3 % K3)",
                                Distortion::maximumOutputLevel),
                        row(results, "Saturation output level", Distortion::saturationOutputLevel),
                        row(results, "How steeply small K3 rises", Distortion::k3Slope)));
    }

    private static List<String> row(
            Results results, String name, Function<Distortion, Quantity> figure) {
        List<String> cells = new ArrayList<>(List.of(name));
        results.distortion()
                .forEach(d -> cells.add(Numbers.full(Find.figure(figure.apply(d)), true)));
        return List.copyOf(cells);
    }

    private static String who(Distortion d) {
        return Words.sentence(d.channel()) + ", " + Numbers.frequency(d.frequencyHz());
    }

    private static DataTable steps(Distortion d) {
        return new DataTable(
                "tones of " + Numbers.frequency(d.frequencyHz()) + ", " + d.channel() + " channel",
                List.of(
                        "Record level, dB",
                        "Replay level, dB",
                        "K2, %",
                        "K3",
                        "All harmonics, %",
                        "Compression, dB",
                        "K3 floor, %",
                        "K3 near its floor",
                        "Left out of the curve",
                        "Interface counts"),
                d.steps().stream().map(DistortionSection::step).toList());
    }

    private static List<String> step(LadderStep s) {
        return List.of(
                Numbers.signed(s.recordLevelDb(), 1),
                s.replayLevelDb() == null
                        ? DataTable.NOTHING
                        : Numbers.signed(s.replayLevelDb(), 2),
                percent(s.k2Percent(), s.noise().k2BelowPercent()),
                k3(s),
                percent(s.thdPercent(), s.noise().thdBelowPercent()),
                s.compressionDb() == null
                        ? DataTable.NOTHING
                        : Numbers.decimal(s.compressionDb(), 2),
                percent(s.k3FloorPercent(), null),
                s.limitedByNoise() && s.k3FloorPercent() != null ? "yes" : DataTable.NOTHING,
                s.noise().leftOut() ? "yes" : DataTable.NOTHING,
                s.noise().limitedByInterface() ? "yes" : DataTable.NOTHING);
    }

    private static String k3(LadderStep s) {
        Double uncertainty = s.noise().k3UncertaintyPercent();
        return s.k3Percent() == null || uncertainty == null
                ? percent(s.k3Percent(), s.noise().k3BelowPercent())
                : Numbers.full(Quantity.known(s.k3Percent(), "%", uncertainty), false);
    }

    /** A share, or what it is below if noise hides it. */
    private static String percent(Double value, Double below) {
        if (value == null) {
            return below == null ? DataTable.NOTHING : "<\u00a0" + percent(below, null);
        }
        return Numbers.decimal(value, value < 0.1 ? 3 : 2);
    }
}
