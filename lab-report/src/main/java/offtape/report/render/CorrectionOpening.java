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

/**
 * What the page of a correction tells first: what is reached, and what to do in which order.
 *
 * @param words of the reader
 */
record CorrectionOpening(Wording words) {

    Markup of(Correction c) {
        Markup out = new Markup();
        out.element("p", words.unbroken(reached(c)), "class", "findings").line();
        out.open("ol", "class", "findings").line();
        steps(c).forEach(s -> out.element("li", words.unbroken(s)).line());
        out.close("ol").line();
        Stream.concat(otherWay(c).stream(), c.notes().stream().map(words::told))
                .forEach(s -> out.element("p", words.unbroken(s)).line());
        return out;
    }

    /** The band that all channels reach. */
    private String reached(Correction c) {
        double from =
                c.channels().stream().mapToDouble(ChannelCorrection::metFromHz).max().orElse(0);
        double to = c.channels().stream().mapToDouble(ChannelCorrection::metToHz).min().orElse(0);
        return words.say(
                c.channels().size() > 1 ? "correction.reached-both" : "correction.reached",
                words.frequency(from),
                words.frequency(to));
    }

    private List<String> steps(Correction c) {
        List<String> steps = new ArrayList<>();
        steps.add(words.say("correction.step-lower", words.decimal(c.lowerByDb(), 1)));
        steps.add(
                words.say(
                        c.filters().size() > 1
                                ? "correction.step-one-of-filters"
                                : "correction.step-filter",
                        words.list(c.filters().stream().map(FilterFile::beforeTape).toList())));
        CorrectionLevelSection levels = new CorrectionLevelSection(words);
        c.levels().forEach(o -> steps.add(words.say("correction.step-level", levels.sweetSpot(o))));
        highs(c).ifPresent(db -> steps.add(words.say("correction.step-highs", words.level(db))));
        return steps;
    }

    private static Optional<Double> highs(Correction c) {
        return c.headroom().stream()
                .map(Headroom::highsBelow)
                .filter(Quantity::isKnown)
                .map(Quantity::value)
                .min(Comparator.naturalOrder());
    }

    private Optional<String> otherWay(Correction c) {
        return c.noise().stream()
                .map(NoiseChange::aWeighted)
                .filter(Quantity::isKnown)
                .map(Quantity::value)
                .max(Comparator.naturalOrder())
                .map(db -> words.say("correction.other-way", words.level(db)));
    }
}
