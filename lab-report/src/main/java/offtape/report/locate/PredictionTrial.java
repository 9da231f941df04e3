package offtape.report.locate;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Tries a linear prediction where the answer is known: inside a long tone of the same recording. So
 * what it misses of the machine's motion is seen and need not be assumed.
 */
final class PredictionTrial {

    /** Errors so far apart are independent: random flutter has no longer memory. */
    private static final double APART_S = 1;

    private static final int FEWEST = 3;
    private static final double STEP_S = 0.02;

    /** Both tails of k = 2: 95.45 % lie between. */
    private static final double TAIL = 0.02275;

    private final double[] late;
    private final TonePhase.Course tone;

    /** Tries in a tone. */
    PredictionTrial(TonePhase.Course tone) {
        this.tone = tone;
        this.late = Parabola.removed(tone.lateSeconds());
    }

    /**
     * Standard uncertainty of a prediction by what it missed in the tone, programme seconds;
     * widened where it could be tried in few places only. NaN if the tone is too short to tell.
     *
     * @param readings what is predicted from
     * @param weights of each
     * @param wanted the time that is predicted, programme seconds
     */
    double sigma(List<PhaseReading> readings, double[] weights, double wanted) {
        double from = wanted;
        double to = wanted;
        for (PhaseReading r : readings) {
            from = Math.min(from, r.programmeSeconds());
            to = Math.max(to, r.programmeSeconds());
        }
        double first = tone.at(0) - from;
        double last = tone.at(late.length - 1) - to;
        double independent = Math.floor((last - first) / APART_S);
        if (!(independent >= FEWEST)) {
            return Double.NaN;
        }
        double sum = 0;
        int count = 0;
        for (double shift = first; shift <= last; shift += STEP_S) {
            double missed = -at(wanted + shift);
            for (int i = 0; i < weights.length; i++) {
                missed += weights[i] * at(readings.get(i).programmeSeconds() + shift);
            }
            sum += missed * missed;
            count++;
        }
        double t = new TDistribution(independent).inverseCumulativeProbability(1 - TAIL);
        return t / 2 * Math.sqrt(sum / count);
    }

    private double at(double programmeSeconds) {
        double place = (programmeSeconds - tone.firstSeconds()) / tone.stepSeconds();
        int i = (int) Math.max(0, Math.min(late.length - 2, Math.floor(place)));
        double part = place - i;
        return late[i] + part * (late[i + 1] - late[i]);
    }
}
