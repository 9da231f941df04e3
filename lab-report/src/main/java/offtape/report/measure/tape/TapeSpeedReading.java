package offtape.report.measure.tape;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.standard.SampleClock;
import offtape.core.tape.ListedTone;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * How fast the tape ran.
 *
 * @param deviation %, positive is fast
 * @param from what it was read from, a plain sentence, or null
 * @param tone the tone for wow and flutter, or null
 */
record TapeSpeedReading(Quantity deviation, String from, NamedTone tone) {

    private static final Sentences SAID = Sentences.near(TapeSpeedReading.class);

    private static final double[] FOR_FLUTTER_HZ = {3150, 3000};
    private static final double LONG_ENOUGH_S = 5;

    /** Reads the speed from the tone that was named for it, or from all tones together. */
    static TapeSpeedReading of(Naming naming, TapeQuestion question) {
        NamedTone tone = tone(naming.tones(), question.speedToneHz()).orElse(null);
        boolean isSaid =
                tone != null
                        && (question.speedToneHz() != null || tone.isFor(ListedTone.Purpose.SPEED));
        NamedTone forFlutter =
                tone != null && tone.heard().seconds() >= LONG_ENOUGH_S ? tone : null;
        if (naming.series().ambiguous() && !isSaid) {
            return new TapeSpeedReading(
                    Quantity.unknown(SAID.say("speed-ambiguous")), null, forFlutter);
        }
        double accuracy =
                question.list() == null || question.list().accuracyPercent() == null
                        ? 0
                        : question.list().accuracyPercent();
        if (isSaid) {
            Quantity own = tone.deviation();
            return new TapeSpeedReading(
                    widened(own, accuracy),
                    SAID.say("speed-by-tone", tone.number(), tone.nominalHz()),
                    forFlutter);
        }
        return fromAll(naming, accuracy, forFlutter);
    }

    private static TapeSpeedReading fromAll(Naming naming, double accuracy, NamedTone forFlutter) {
        List<NamedTone> tones = naming.tones().stream().filter(t -> t.nominalHz() != null).toList();
        if (tones.isEmpty()) {
            return new TapeSpeedReading(
                    Quantity.unknown(SAID.say("speed-unknown")), null, forFlutter);
        }
        double weights = tones.stream().mapToDouble(TapeSpeedReading::weight).sum();
        double mean =
                tones.stream().mapToDouble(t -> weight(t) * t.deviation().value()).sum() / weights;
        double own =
                Math.sqrt(
                                tones.stream()
                                        .mapToDouble(t -> square(weight(t) * t.ownUncertainty()))
                                        .sum())
                        / weights;
        double scatter =
                2
                        * Math.sqrt(
                                tones.stream()
                                                .mapToDouble(
                                                        t ->
                                                                square(
                                                                        weight(t)
                                                                                * (t.deviation()
                                                                                                .value()
                                                                                        - mean)))
                                                .sum()
                                        * tones.size()
                                        / Math.max(1, tones.size() - 1))
                        / weights;
        return new TapeSpeedReading(
                widened(byClock(mean, Math.max(own, scatter)), accuracy),
                tones.size() == 1
                        ? SAID.say("speed-by-one")
                        : SAID.say("speed-by-all", tones.size()),
                forFlutter);
    }

    /** Long tones average wow out. */
    private static double weight(NamedTone tone) {
        return Math.min(30, tone.heard().seconds());
    }

    private static double square(double x) {
        return x * x;
    }

    private static Quantity byClock(double percent, double uncertainty) {
        double clock = SampleClock.UNCERTAINTY * (100 + percent);
        return Quantity.known(percent, "%", Math.hypot(uncertainty, clock));
    }

    private static Quantity widened(Quantity speed, double accuracy) {
        return Quantity.known(
                speed.value(), speed.unit(), Math.hypot(speed.uncertainty(), accuracy));
    }

    /** The tone for speed: the one named, else that of the list, else one for wow and flutter. */
    private static Optional<NamedTone> tone(List<NamedTone> tones, Double namedHz) {
        Comparator<NamedTone> longer = Comparator.comparingDouble(t -> t.heard().seconds());
        if (namedHz != null) {
            return tones.stream().filter(t -> t.isOf(namedHz)).max(longer);
        }
        Optional<NamedTone> listed =
                tones.stream().filter(t -> t.isFor(ListedTone.Purpose.SPEED)).max(longer);
        for (double hz : FOR_FLUTTER_HZ) {
            listed = listed.or(() -> tones.stream().filter(t -> t.isOf(hz)).max(longer));
        }
        return listed;
    }
}
