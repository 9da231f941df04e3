package offtape.report.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.NoiseChange;

/** What the page of a correction tells first: what is reached, and what to do in which order. */
final class CorrectionOpening {

    private CorrectionOpening() {}

    static Markup of(Correction c) {
        Markup out = new Markup();
        out.element("p", Words.unbroken(reached(c)), "class", "findings").line();
        out.open("ol", "class", "findings").line();
        steps(c).forEach(s -> out.element("li", Words.unbroken(s)).line());
        out.close("ol").line();
        Stream.concat(otherWay(c).stream(), c.notes().stream())
                .forEach(s -> out.element("p", Words.unbroken(s)).line());
        return out;
    }

    /** The band that all channels reach. */
    private static String reached(Correction c) {
        double from =
                c.channels().stream().mapToDouble(ChannelCorrection::metFromHz).max().orElse(0);
        double to = c.channels().stream().mapToDouble(ChannelCorrection::metToHz).min().orElse(0);
        String who = c.channels().size() > 1 ? ", on both channels." : ".";
        return "With a filter ahead of the tape the return keeps within 0.5 dB of the target from "
                + Numbers.frequency(from)
                + " to "
                + Numbers.frequency(to)
                + who;
    }

    private static List<String> steps(Correction c) {
        List<String> steps = new ArrayList<>();
        steps.add(
                "Turn the programme down by "
                        + Numbers.decimal(c.lowerByDb(), 1)
                        + " dB, so that boosted tones stay within full scale.");
        steps.add(
                "Pass it through "
                        + Words.list(c.filters().stream().map(FilterFile::beforeTape).toList())
                        + (c.filters().size() > 1 ? ", whichever is of its sample rate," : "")
                        + " or through the equaliser bands below.");
        c.levels()
                .forEach(
                        o ->
                                steps.add(
                                        "Set the record level: "
                                                + CorrectionLevelSection.sweetSpot(o)));
        highs(c).ifPresent(
                        db ->
                                steps.add(
                                        "Keep the programme's highs below "
                                                + Numbers.level(db)
                                                + " re reference, or the tape compresses them."));
        return steps;
    }

    private static Optional<Double> highs(Correction c) {
        return c.headroom().stream()
                .map(Headroom::highsBelow)
                .filter(Quantity::isKnown)
                .map(Quantity::value)
                .min(Comparator.naturalOrder());
    }

    private static Optional<String> otherWay(Correction c) {
        return c.noise().stream()
                .map(NoiseChange::aWeighted)
                .filter(Quantity::isKnown)
                .map(Quantity::value)
                .max(Comparator.naturalOrder())
                .map(
                        db ->
                                "Or leave the programme as it is and put the same filter behind the"
                                        + " tape, never both: the hiss then changes by up to "
                                        + Numbers.level(db)
                                        + " (A-weighted).");
    }
}
