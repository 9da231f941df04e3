package offtape.report.fault.symptom;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What the response shows: what both channels lose, and in what they differ. */
final class ResponseSymptoms {

    private static final Sentences SAID = Sentences.near(ResponseSymptoms.class);

    private static final double[] FREQUENCIES_HZ = {
        63, 125, 315, 2000, 4000, 6300, 10_000, 12_500, 16_000
    };

    /** Simulated machines are smoother than real ones by so much, dB. */
    private static final double[] GRAIN_DB = {0.8, 0.4, 0.2, 0.2, 0.25, 0.3, 0.4, 0.6, 0.9};

    /** What comes back weaker is as good as lost, dB. */
    private static final double LOST_DB = -40;

    private static final List<Symptom> COMMON = responses(false);
    private static final List<Symptom> DIFFERENCE = responses(true);
    private static final Symptom LOUD =
            Symptom.decibels("loud-treble", SAID.say("loud-treble"), false, 0.5);
    private static final Symptom LOUD_DIFFERENCE =
            Symptom.decibels(
                    "loud-treble-difference", SAID.say("loud-treble-difference"), true, 0.5);

    /** All of them. */
    static final List<Symptom> ALL = all();

    private ResponseSymptoms() {}

    private static List<Symptom> all() {
        List<Symptom> all = new ArrayList<>(COMMON);
        all.addAll(DIFFERENCE);
        all.add(LOUD);
        all.add(LOUD_DIFFERENCE);
        return List.copyOf(all);
    }

    private static List<Symptom> responses(boolean difference) {
        List<Symptom> list = new ArrayList<>();
        for (int i = 0; i < FREQUENCIES_HZ.length; i++) {
            String hz = String.format(Locale.ROOT, "%.0f", FREQUENCIES_HZ[i]);
            list.add(
                    Symptom.decibels(
                            "response-" + hz + (difference ? "-difference" : ""),
                            SAID.say(difference ? "response-difference" : "response-mean", hz),
                            difference,
                            GRAIN_DB[i]));
        }
        return list;
    }

    static void read(Results results, Symptoms to) {
        for (int i = 0; i < FREQUENCIES_HZ.length; i++) {
            double hz = FREQUENCIES_HZ[i];
            Pair.of(c -> Find.quietResponse(results, c).flatMap(r -> at(r, hz)))
                    .put(to, COMMON.get(i), DIFFERENCE.get(i));
        }
        Pair.of(c -> loud(results, c)).put(to, LOUD, LOUD_DIFFERENCE);
    }

    private static Optional<Quantity> loud(Results results, String channel) {
        return results.response().stream()
                .filter(r -> r.channel().equals(channel) && r.levelDependence() != null)
                .map(Response::levelDependence)
                .map(LevelDependence::lossAt10kHz)
                .findFirst();
    }

    private static Optional<Quantity> at(Response response, double hz) {
        double[] f = response.frequencyHz();
        if (f.length < 2 || f[0] > hz || f[f.length - 1] < hz) {
            return Optional.empty();
        }
        int i = 1;
        while (f[i] < hz) {
            i++;
        }
        double share = Math.log(hz / f[i - 1]) / Math.log(f[i] / f[i - 1]);
        double db = mixed(response.magnitudeDb(), i, share);
        double uncertainty = Math.max(0, mixed(response.uncertaintyDb(), i, share));
        return Optional.of(Quantity.known(Math.max(LOST_DB, db), "dB", uncertainty));
    }

    private static double mixed(double[] y, int i, double share) {
        return y[i - 1] + share * (y[i] - y[i - 1]);
    }
}
