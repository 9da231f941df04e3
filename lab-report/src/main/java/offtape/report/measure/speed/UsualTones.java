package offtape.report.measure.speed;

import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.report.measure.tone.FoundTone;

/** The frequencies of test tones in use, and what an odd one may have been. */
final class UsualTones {

    private static final Sentences SAID = Sentences.near(UsualTones.class);

    /** Wow and flutter: IEC, and older American and Japanese practice. */
    private static final double[] FLUTTER_HZ = {3150, 3000};

    /** Those, then level, highs, slow tape. */
    private static final double[] USUAL_HZ = {3150, 3000, 1000, 10_000, 315, 333, 400, 440, 8000};

    /** How far a machine may be off speed with its tone still known for what it is. */
    static final double NEAR = 0.06;

    /** Speeds that are wrong for a reason: ratio, and the sentence that says it. */
    private static final Object[][] REASONS = {
        {5.0 / 6, "guess-60-on-50"},
        {6.0 / 5, "guess-50-on-60"},
        {2.0, "guess-twice"},
        {0.5, "guess-half"}
    };

    private static final double SAME = 0.025;

    private UsualTones() {}

    /** Whether a tone is near one that is meant for wow and flutter. */
    static boolean isForFlutter(FoundTone tone) {
        return tone.isNear(FLUTTER_HZ[0], NEAR) || tone.isNear(FLUTTER_HZ[1], NEAR);
    }

    /** The usual tone nearest to a frequency, if there is one within 6 %. */
    static Optional<Double> nearest(double hz) {
        double best = USUAL_HZ[0];
        for (double usual : USUAL_HZ) {
            best = distance(hz, usual) < distance(hz, best) ? usual : best;
        }
        return distance(hz, best) <= Math.log1p(NEAR) ? Optional.of(best) : Optional.empty();
    }

    /** A sentence if two usual tones lie about as near, else nothing. */
    static Optional<String> doubt(double hz, double taken) {
        for (double usual : USUAL_HZ) {
            boolean possible = usual != taken && distance(hz, usual) <= Math.log1p(NEAR);
            if (possible && distance(hz, usual) < 3 * distance(hz, taken)) {
                return Optional.of(SAID.say("doubt", hz, taken, usual));
            }
        }
        return Optional.empty();
    }

    /** What an odd tone would be if the speed were wrong for a usual reason. */
    static Optional<String> guess(double hz) {
        for (double usual : USUAL_HZ) {
            for (Object[] reason : REASONS) {
                if (distance(hz, usual * (double) reason[0]) < SAME) {
                    return Optional.of(SAID.say((String) reason[1], usual));
                }
            }
        }
        return Optional.empty();
    }

    private static double distance(double a, double b) {
        return Math.abs(Math.log(a / b));
    }
}
