package offtape.report.measure.processing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.text.Sentences;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;

/**
 * Highs of which a louder sweep brings back more than a quiet one: noise reduction that is on in
 * replay only, or a noise gate. Tape never gains with level; it loses highs first.
 */
final class RisingHighs {

    private static final Sentences SAID = Sentences.near(RisingHighs.class);

    /** Beyond what the middle loses and the uncertainty so much more must come back, dB. */
    private static final double LEAST_DB = 0.8;

    /** What the middle may lose between the two levels where no ladder tells it, dB. */
    private static final double UNKNOWN_LOSS_DB = 1.5;

    private static final double LOWEST_HZ = 1500;
    private static final double HIGHEST_HZ = 16_000;
    private static final double MIDDLE_HZ = 1500;

    /** Over so wide a stretch, as a ratio: longer than a dropout takes off a sweep. */
    private static final double WIDTH = 2;

    private RisingHighs() {}

    /** The warning, if a louder response shows that. */
    static Optional<HealthNote> in(Response loud, List<Distortion> ladders) {
        LevelDependence change = loud.levelDependence();
        if (change == null) {
            return Optional.empty();
        }
        double allowed = LEAST_DB + middleLossDb(loud, ladders);
        double[] hz = change.frequencyHz();
        double from = Double.NaN;
        double most = 0;
        double mostHz = 0;
        for (int i = 0; i < hz.length && hz[i] <= HIGHEST_HZ; i++) {
            double excess = change.differenceDb()[i] - 2 * change.uncertaintyDb()[i] - allowed;
            if (hz[i] < LOWEST_HZ || excess <= 0) {
                from = Double.NaN;
                most = 0;
                continue;
            }
            from = Double.isNaN(from) ? hz[i] : from;
            if (change.differenceDb()[i] > most) {
                most = change.differenceDb()[i];
                mostHz = hz[i];
            }
            boolean ends = i + 1 == hz.length || hz[i + 1] > HIGHEST_HZ;
            if (hz[i] > WIDTH * from && (ends || falls(change, i, allowed))) {
                return Optional.of(note(loud, mostHz, most));
            }
        }
        return Optional.empty();
    }

    private static boolean falls(LevelDependence change, int i, double allowed) {
        return change.differenceDb()[i + 1] - 2 * change.uncertaintyDb()[i + 1] <= allowed;
    }

    /** How much 1 kHz, to which both sweeps are referred, loses from the quiet to the loud one. */
    private static double middleLossDb(Response loud, List<Distortion> ladders) {
        for (Distortion ladder : ladders) {
            if (ladder.channel().equals(loud.channel()) && ladder.frequencyHz() < MIDDLE_HZ) {
                LadderGain gain = LadderGain.of(ladder);
                OptionalDouble quiet = gain.atLevel(loud.levelDependence().quietLevelDb());
                OptionalDouble high = gain.atLevel(loud.levelDb());
                if (quiet.isPresent() && high.isPresent()) {
                    return Math.max(0, quiet.getAsDouble() - high.getAsDouble());
                }
            }
        }
        return UNKNOWN_LOSS_DB;
    }

    private static HealthNote note(Response loud, double hz, double db) {
        return new HealthNote(
                "warning",
                "noise-reduction",
                SAID.say(
                        "highs-held-down",
                        loud.channel(),
                        loud.levelDb(),
                        db,
                        hz,
                        loud.levelDependence().quietLevelDb()));
    }
}
