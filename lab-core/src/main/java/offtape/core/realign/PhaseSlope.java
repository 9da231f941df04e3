package offtape.core.realign;

import java.util.List;

/**
 * The delay that is left in the responses of a path: that without which their phase from 500 Hz to
 * 8 kHz is as near as can be to a constant for each channel (least squares, weighed by coherence as
 * c/(1 − c)). What filters in the bass and losses of the highs turn the phase by then neither
 * counts as delay of its own nor is lost.
 *
 * @param late delay common to all channels, frames
 * @param doubt standard uncertainty of that, frames
 * @param isWithin whether enough of the sound lies in that range; else all of it was used
 */
record PhaseSlope(double late, double doubt, boolean isWithin) {

    private static final double LOW_HZ = 500;
    private static final double HIGH_HZ = 8000;
    private static final double LEAST_COHERENCE = 0.05;
    private static final double MOST_WEIGHT = 1e9;

    /** As independent as the bins of a Hann window are. */
    private static final double INDEPENDENT = 1 / 1.5;

    /** From how many independent pieces of evidence on the range is enough. */
    private static final double ENOUGH = 100;

    /** The delay left after so many windows. */
    static PhaseSlope of(Windows windows, List<Transfer> path, int number) {
        int low = windows.bin(LOW_HZ);
        int high = windows.bin(HIGH_HZ);
        Sums within = sums(windows, path, low, high);
        boolean isEnough = within.weight * number > ENOUGH && within.spread > 0;
        Sums sums = isEnough ? within : sums(windows, path, 0, windows.bins());
        if (!(sums.spread > 0)) {
            return new PhaseSlope(0, windows.length(), false);
        }
        double doubt = 1 / Math.sqrt(2 * INDEPENDENT * number * sums.spread);
        return new PhaseSlope(-sums.tilt / sums.spread, doubt, isEnough);
    }

    private static final class Sums {
        double spread;
        double tilt;
        double weight;
    }

    private static Sums sums(Windows windows, List<Transfer> path, int low, int high) {
        Sums all = new Sums();
        for (Transfer t : path) {
            add(all, windows, t, low, high);
        }
        return all;
    }

    private static void add(Sums all, Windows windows, Transfer t, int low, int high) {
        double[] phase = unwrapped(t, low, high);
        double weight = 0;
        double omega = 0;
        double mean = 0;
        for (int k = low; k < high; k++) {
            double w = weight(t, k);
            weight += w;
            omega += w * windows.omega(k);
            mean += w * phase[k - low];
        }
        for (int k = low; k < high && weight > 0; k++) {
            double off = windows.omega(k) - omega / weight;
            all.spread += weight(t, k) * off * off;
            all.tilt += weight(t, k) * off * (phase[k - low] - mean / weight);
        }
        all.weight += weight;
    }

    private static double weight(Transfer t, int k) {
        double c = t.coherence()[k];
        return c < LEAST_COHERENCE ? 0 : Math.min(MOST_WEIGHT, c / Math.max(1e-12, 1 - c));
    }

    private static double[] unwrapped(Transfer t, int low, int high) {
        double[] phase = new double[Math.max(0, high - low)];
        double last = 0;
        boolean isFirst = true;
        for (int k = low; k < high; k++) {
            double raw = Math.atan2(t.im()[k], t.re()[k]);
            double turns = isFirst ? 0 : Math.rint((raw - last) / (2 * Math.PI));
            phase[k - low] = raw - 2 * Math.PI * turns;
            if (weight(t, k) > 0) {
                last = phase[k - low];
                isFirst = false;
            }
        }
        return phase;
    }
}
