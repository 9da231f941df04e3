package offtape.report.measure.pass;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/** Highest, mean and spread of the same reading in several replays; of those that have it. */
final class PassSpread {

    private static final Sentences SAID = Sentences.near(PassSpread.class);

    private PassSpread() {}

    static Quantity highest(List<Quantity> all) {
        return ofKnown(
                all,
                known -> known.stream().max(Comparator.comparing(Quantity::value)).orElseThrow());
    }

    /** Filters and detectors err alike in all, so the mean is no more certain than one. */
    static Quantity mean(List<Quantity> all) {
        return ofKnown(
                all,
                known ->
                        Quantity.known(
                                known.stream().mapToDouble(Quantity::value).average().orElseThrow(),
                                known.get(0).unit(),
                                known.stream()
                                        .mapToDouble(Quantity::uncertainty)
                                        .average()
                                        .orElseThrow()));
    }

    /** Highest less lowest. */
    static Quantity spread(List<Quantity> all) {
        Quantity high = highest(all);
        if (all.stream().filter(Quantity::isKnown).count() < 2) {
            return Quantity.unknown(SAID.say("few-with-reading"));
        }
        Quantity low =
                all.stream()
                        .filter(Quantity::isKnown)
                        .min(Comparator.comparing(Quantity::value))
                        .orElseThrow();
        return Quantity.known(
                high.value() - low.value(),
                high.unit(),
                Math.hypot(high.uncertainty(), low.uncertainty()));
    }

    private static Quantity ofKnown(List<Quantity> all, Function<List<Quantity>, Quantity> figure) {
        List<Quantity> known = all.stream().filter(Quantity::isKnown).toList();
        return known.isEmpty() ? all.get(0) : figure.apply(known);
    }
}
