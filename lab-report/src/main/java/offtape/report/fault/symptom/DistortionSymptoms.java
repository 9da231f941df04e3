package offtape.report.fault.symptom;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Results;

/** What the ladders of tones show. */
final class DistortionSymptoms {

    private static final Sentences SAID = Sentences.near(DistortionSymptoms.class);

    private static final Symptom LEVEL =
            Symptom.decibels("level-at-3-percent", SAID.say("level-at-3-percent"), false, 0.5);
    private static final Symptom LEVEL_DIFFERENCE =
            Symptom.decibels(
                    "level-at-3-percent-difference",
                    SAID.say("level-at-3-percent-difference"),
                    true,
                    0.4);
    private static final Symptom TOP_DIFFERENCE =
            Symptom.decibels(
                    "maximum-output-difference", SAID.say("maximum-output-difference"), true, 0.4);
    private static final Symptom THIRD =
            Symptom.size("third-harmonic", SAID.say("third-harmonic"), "%", 0.1);
    private static final Symptom SECOND =
            Symptom.size("second-harmonic", SAID.say("second-harmonic"), "%", 0.1);
    private static final Symptom SECOND_DIFFERENCE =
            ratio("second-harmonic-difference", SAID.say("second-harmonic-difference"));
    private static final Symptom SLOPE =
            Symptom.decibels("k3-slope", SAID.say("k3-slope"), false, 0.3);
    private static final Symptom TREBLE_TOP =
            Symptom.decibels("treble-saturation", SAID.say("treble-saturation"), false, 0.7);

    /** All of them. */
    static final List<Symptom> ALL =
            List.of(
                    LEVEL,
                    LEVEL_DIFFERENCE,
                    TOP_DIFFERENCE,
                    THIRD,
                    SECOND,
                    SECOND_DIFFERENCE,
                    SLOPE,
                    TREBLE_TOP);

    /** Steps no farther from the reference level are read as if they were at it, dB. */
    private static final double NEAR_DB = 2;

    /** Less harmonic than this nobody asks for, percent. */
    private static final double LEAST_PERCENT = 0.03;

    private DistortionSymptoms() {}

    private static Symptom ratio(String key, String words) {
        return new Symptom(key, words, "decades", Scale.LINEAR, Joining.SUM, true, 0.1);
    }

    static void read(Results results, Symptoms to) {
        tone(results, Distortion::levelAtK3ThreePercent).put(to, LEVEL, LEVEL_DIFFERENCE);
        Pair top = tone(results, Distortion::maximumOutputLevel);
        if (top.left() != null && top.right() != null) {
            to.put(TOP_DIFFERENCE, top.right().value() - top.left().value(), 0.1);
        }
        tone(results, Distortion::k3Slope).put(to, SLOPE, null);
        Pair.of(c -> Find.trebleLadder(results, c).map(Distortion::saturationOutputLevel))
                .put(to, TREBLE_TOP, null);
        harmonic(results, LadderStep::k3Percent).putLarger(to, THIRD);
        Pair second = harmonic(results, LadderStep::k2Percent);
        second.putLarger(to, SECOND);
        if (second.left() != null && second.right() != null) {
            to.put(
                    SECOND_DIFFERENCE,
                    Math.log10(second.right().value() / second.left().value()),
                    0);
        }
    }

    private static Pair tone(Results results, Function<Distortion, Quantity> figure) {
        return Pair.of(c -> Find.toneLadder(results, c).map(figure));
    }

    private static Pair harmonic(Results results, Function<LadderStep, Double> harmonic) {
        return Pair.of(c -> Find.toneLadder(results, c).flatMap(d -> atReference(d, harmonic)));
    }

    /** A harmonic at the reference level; one that does not stand out is no more than the noise. */
    private static Optional<Quantity> atReference(
            Distortion ladder, Function<LadderStep, Double> harmonic) {
        return ladder.steps().stream()
                .filter(s -> s.replayLevelDb() != null && Math.abs(s.recordLevelDb()) <= NEAR_DB)
                .min(Comparator.comparingDouble(s -> Math.abs(s.recordLevelDb())))
                .map(s -> percent(s, harmonic.apply(s)));
    }

    private static Quantity percent(LadderStep step, Double percent) {
        double floor = step.k3FloorPercent() == null ? 0 : step.k3FloorPercent();
        double value = Math.max(LEAST_PERCENT, percent == null ? floor : percent);
        return Quantity.known(value, "%", Math.min(floor, value));
    }
}
