package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.report.result.Response;

/**
 * The part of a response that losses are read from, thinned to points whose noise is independent.
 * Neighbouring points of a response share samples: its parabolas reach a twelfth of an octave to
 * either side. The correlation of two such values a twelfth of an octave apart is −0.02 by the
 * weights 9/8 − 15/8·x² (Savitzky and Golay 1964), so that every second point is independent.
 *
 * @param hz frequencies, rising
 * @param db magnitude at each
 * @param noiseDb standard deviation of the noise of each
 */
record LossCurve(double[] hz, double[] db, double[] noiseDb) {

    /** Below, the head's contour and the amplifiers' lower edges shape the curve. */
    private static final double FROM_HZ = 500;

    private static final double TO_HZ = 20_000;

    /** What is more uncertain (k = 2) or weaker than this tells nothing of causes. */
    private static final double UNSURE_DB = 1.5;

    private static final double WEAKEST_DB = -30;
    private static final double APART = Math.pow(2, 1.0 / 12) * 0.999;

    /** Noise of a response is estimated from few values; its neighbours' share is taken in. */
    private static final double NEIGHBOURS = Math.pow(2, 1.0 / 3);

    /** Standard deviation of what filters leave, part of every uncertainty ({@link Covariance}). */
    static final double OWN_DB = 0.01;

    private static final double LEAST_NOISE_DB = 0.003;
    private static final int COMMON_STEPS = 20;
    private static final int FEWEST = 16;
    private static final double LEAST_TOP_HZ = 4000;

    /**
     * The part of a response between 500 Hz and where it is lost in noise, 20 kHz at most.
     *
     * @param limitHz highest frequency that the recorder passes unchanged
     * @return null if it does not reach 4 kHz
     */
    static LossCurve of(Response response, double limitHz) {
        double[] all = response.frequencyHz();
        double top = Math.min(TO_HZ, limitHz);
        List<Integer> kept = new ArrayList<>();
        double last = 0;
        for (int i = 0; i < all.length && all[i] <= top; i++) {
            boolean sure =
                    response.uncertaintyDb()[i] < UNSURE_DB
                            && response.magnitudeDb()[i] > WEAKEST_DB;
            if (all[i] >= FROM_HZ && !sure && all[i] > 1000) {
                break;
            }
            // The point at 1 kHz is 0 by definition and carries no error of its own.
            if (all[i] >= FROM_HZ && sure && all[i] > last * APART && Math.abs(all[i] - 1000) > 1) {
                kept.add(i);
                last = all[i];
            }
        }
        if (kept.size() < FEWEST || last < LEAST_TOP_HZ) {
            return null;
        }
        double[] hz = kept.stream().mapToDouble(i -> all[i]).toArray();
        double[] db = kept.stream().mapToDouble(i -> response.magnitudeDb()[i]).toArray();
        return new LossCurve(hz, db, noise(response, hz, db));
    }

    /**
     * The noise of each point: its uncertainty less what filters leave and less the noise of the
     * value at 1 kHz, which is common to all and taken in by the fit's offset.
     */
    private static double[] noise(Response response, double[] hz, double[] db) {
        double[] variance = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            double sum = 0;
            int count = 0;
            for (int j = 0; j < response.frequencyHz().length; j++) {
                double ratio = response.frequencyHz()[j] / hz[i];
                boolean at1kHz = Math.abs(response.frequencyHz()[j] - 1000) < 1;
                if (ratio > 1 / NEIGHBOURS && ratio < NEIGHBOURS && !at1kHz) {
                    double standard = response.uncertaintyDb()[j] / 2;
                    sum += Math.max(0, standard * standard - OWN_DB * OWN_DB);
                    count++;
                }
            }
            variance[i] = sum / Math.max(1, count);
        }
        double common = common(db, variance);
        return Arrays.stream(variance)
                .map(v -> Math.max(LEAST_NOISE_DB, Math.sqrt(v - common)))
                .toArray();
    }

    /**
     * The variance common to all points that makes their third differences likeliest, which a
     * smooth curve hardly has: of independent values they have (1 + 9 + 9 + 1) times the variance.
     */
    private static double common(double[] db, double[] variance) {
        double least = Arrays.stream(variance).min().orElse(0);
        double best = 0;
        double cost = Double.POSITIVE_INFINITY;
        for (int tried = 0; tried < COMMON_STEPS; tried++) {
            double common = least * tried / COMMON_STEPS;
            double sum = 0;
            for (int i = 0; i + 3 < db.length; i++) {
                double third = db[i + 3] - 3 * db[i + 2] + 3 * db[i + 1] - db[i];
                double own = Math.max(LEAST_NOISE_DB * LEAST_NOISE_DB, variance[i + 1] - common);
                sum += third * third / (20 * own) + Math.log(own);
            }
            if (sum < cost) {
                cost = sum;
                best = common;
            }
        }
        return best;
    }

    int size() {
        return hz.length;
    }

    double toHz() {
        return hz[hz.length - 1];
    }
}
