package offtape.report.render;

import java.util.List;
import java.util.Optional;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Distortion;
import offtape.report.result.Results;

/**
 * The record levels at which tape colours sound without squeezing it: between the level where K3
 * reaches 1 % and the level where compression reaches 1 dB.
 *
 * @param fromDb lower end, dB re reference
 * @param toDb upper end, dB re reference
 */
record UsefulRange(double fromDb, double toDb) {

    /** The range of one channel, if both its ends are known and differ. */
    static Optional<UsefulRange> of(Distortion distortion) {
        Quantity k3 = Find.figure(distortion.levelAtK3OnePercent());
        Quantity squeezed = Find.figure(distortion.levelAtCompressionOneDb());
        if (!k3.isKnown() || !squeezed.isKnown() || !(k3.value() < squeezed.value())) {
            return Optional.empty();
        }
        return Optional.of(new UsefulRange(k3.value(), squeezed.value()));
    }

    /** The range that all channels with a ladder share. */
    static Optional<UsefulRange> shared(Results results) {
        List<Optional<UsefulRange>> ranges =
                Find.CHANNELS.stream()
                        .flatMap(c -> Find.toneLadder(results, c).stream())
                        .map(UsefulRange::of)
                        .toList();
        if (ranges.isEmpty() || ranges.stream().anyMatch(Optional::isEmpty)) {
            return Optional.empty();
        }
        double from =
                ranges.stream().mapToDouble(r -> r.orElseThrow().fromDb()).max().orElseThrow();
        double to = ranges.stream().mapToDouble(r -> r.orElseThrow().toDb()).min().orElseThrow();
        return from < to ? Optional.of(new UsefulRange(from, to)) : Optional.empty();
    }

    /** The range in words: {@code +1.2 dB to +5.8 dB}. */
    String words() {
        return Numbers.level(fromDb) + " to " + Numbers.level(toDb);
    }
}
