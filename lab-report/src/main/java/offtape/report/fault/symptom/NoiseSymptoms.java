package offtape.report.fault.symptom;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Noise;
import offtape.report.result.Results;

/** What the silence shows. */
final class NoiseSymptoms {

    private static final Sentences SAID = Sentences.near(NoiseSymptoms.class);

    private static final Symptom HISS = Symptom.decibels("hiss", SAID.say("hiss"), false, 0.7);
    private static final Symptom HISS_DIFFERENCE =
            Symptom.decibels("hiss-difference", SAID.say("hiss-difference"), true, 0.5);
    private static final Symptom DARKNESS =
            Symptom.decibels("noise-darkness", SAID.say("noise-darkness"), false, 0.7);
    private static final Symptom HUM = Symptom.level("hum-odd", SAID.say("hum-odd"), 4);
    private static final Symptom BUZZ = Symptom.level("hum-even", SAID.say("hum-even"), 4);
    private static final Symptom ROUGHNESS =
            Symptom.level("modulation-noise", SAID.say("modulation-noise"), 1.5);

    private static final Symptom RESIDUE = Symptom.level("residue", SAID.say("residue"), 2);

    /** All of them. */
    static final List<Symptom> ALL =
            List.of(HISS, HISS_DIFFERENCE, DARKNESS, HUM, BUZZ, ROUGHNESS, RESIDUE);

    /** Hum below this nobody asks for, dB re reference. */
    private static final double LEAST_HUM_DB = -75;

    /** An earlier recording that is not heard is no louder than this, dB re reference. */
    private static final double LEAST_RESIDUE_DB = -75;

    private NoiseSymptoms() {}

    static void read(Results results, Symptoms to) {
        figure(results, Noise::aWeighted).put(to, HISS, HISS_DIFFERENCE);
        Pair.of(c -> Find.noise(results, c).flatMap(NoiseSymptoms::darkness))
                .put(to, DARKNESS, null);
        Pair.of(c -> Find.noise(results, c).flatMap(n -> hum(n, 1))).putLarger(to, HUM);
        Pair.of(c -> Find.noise(results, c).flatMap(n -> hum(n, 0))).putLarger(to, BUZZ);
        figure(results, Noise::modulationNoise).putLarger(to, ROUGHNESS);
        Pair.of(c -> Find.noise(results, c).flatMap(NoiseSymptoms::residue)).putLarger(to, RESIDUE);
    }

    private static Optional<Quantity> residue(Noise noise) {
        if (noise.residue() == null) {
            return Optional.empty();
        }
        double db = Find.value(noise.residue()).orElse(LEAST_RESIDUE_DB);
        return Optional.of(Quantity.known(Math.max(LEAST_RESIDUE_DB, db), "dB", 1));
    }

    private static Pair figure(Results results, Function<Noise, Quantity> figure) {
        return Pair.of(c -> Find.noise(results, c).map(figure));
    }

    private static Optional<Quantity> darkness(Noise noise) {
        if (!noise.unweighted().isKnown() || !noise.aWeighted().isKnown()) {
            return Optional.empty();
        }
        double db = noise.unweighted().value() - noise.aWeighted().value();
        return Optional.of(Quantity.known(db, "dB", noise.aWeighted().uncertainty()));
    }

    /**
     * The strongest line whose order has a remainder by two; where there is none, the level from
     * which one would have been found.
     */
    private static Optional<Quantity> hum(Noise noise, int remainder) {
        if (!noise.unweighted().isKnown()) {
            return Optional.empty();
        }
        double level = LEAST_HUM_DB;
        if (noise.mainsFrequency() != null && noise.mainsFrequency().isKnown()) {
            double mains = noise.mainsFrequency().value();
            level =
                    noise.hum().stream()
                            .filter(l -> Math.round(l.frequencyHz() / mains) % 2 == remainder)
                            .mapToDouble(l -> l.levelDb())
                            .reduce(LEAST_HUM_DB, Math::max);
        }
        return Optional.of(Quantity.known(level, "dB", 1));
    }
}
