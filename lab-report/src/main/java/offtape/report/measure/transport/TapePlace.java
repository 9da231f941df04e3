package offtape.report.measure.transport;

import offtape.core.dsp.SincInterpolator;

/**
 * A stretch of time as the tape passes. Over the tape's length the heads are always the same
 * distance apart, however the tape wavers; over time the delay between them wavers with it. The
 * places are so close that a whole number of them lies between the heads.
 */
final class TapePlace {

    /** Values beyond either end that an interpolation reaches for. */
    private static final int MARGIN = 40;

    private final int count;
    private final double rateHz;
    private final int lag;
    private final double placeRateHz;

    /** How far ahead of even motion the tape is at each sample, seconds; 0 at both ends. */
    private final double[] ahead;

    private TapePlace(double[] ahead, double rateHz, double delaySeconds) {
        this.count = ahead.length;
        this.rateHz = rateHz;
        this.lag = (int) Math.max(1, Math.round(delaySeconds * rateHz));
        this.placeRateHz = lag / delaySeconds;
        this.ahead = ahead;
    }

    /** The places of a tape that moves with a deviation, percent, about 0. */
    static TapePlace along(double[] deviation, double rateHz, double delaySeconds) {
        double[] ahead = new double[deviation.length];
        double sum = 0;
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = sum;
            int next = Math.min(i + 1, ahead.length - 1);
            sum += (deviation[i] + deviation[next]) / 200 / rateHz;
        }
        double slope = ahead.length < 2 ? 0 : sum / (ahead.length - 1);
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] -= slope * i;
        }
        return new TapePlace(ahead, rateHz, delaySeconds);
    }

    /** Places between the heads. */
    int lag() {
        return lag;
    }

    /** Places a second of even motion. */
    double placeRateHz() {
        return placeRateHz;
    }

    /** Values over time as values over place. */
    double[] toPlaces(double[] overTime) {
        double[] x = mirrored(overTime);
        double[] y = new double[(int) ((count - 1) / rateHz * placeRateHz) + 1];
        for (int i = 0; i < y.length; i++) {
            double place = i / placeRateHz;
            double time = place;
            for (int step = 0; step < 3; step++) {
                time = place - aheadAt(time * rateHz);
            }
            y[i] = SincInterpolator.at(x, held(time * rateHz, count) + MARGIN);
        }
        return y;
    }

    /** Values over place as values over time. */
    double[] toTime(double[] overPlace) {
        double[] x = mirrored(overPlace);
        double[] y = new double[count];
        for (int i = 0; i < count; i++) {
            double place = (i / rateHz + ahead[i]) * placeRateHz;
            y[i] = SincInterpolator.at(x, held(place, overPlace.length) + MARGIN);
        }
        return y;
    }

    private static double held(double index, int length) {
        return Math.max(0, Math.min(length - 1.0, index));
    }

    private double aheadAt(double index) {
        double at = held(index, count);
        int before = Math.max(0, Math.min(count - 2, (int) at));
        double share = at - before;
        return ahead[before] * (1 - share) + ahead[Math.min(before + 1, count - 1)] * share;
    }

    /** With its ends turned over, so that neither the value nor its slope jumps there. */
    private static double[] mirrored(double[] x) {
        int n = x.length;
        double[] y = new double[n + 2 * MARGIN];
        System.arraycopy(x, 0, y, MARGIN, n);
        for (int i = 1; i <= MARGIN; i++) {
            y[MARGIN - i] = 2 * x[0] - x[Math.min(i, n - 1)];
            y[MARGIN + n - 1 + i] = 2 * x[n - 1] - x[Math.max(0, n - 1 - i)];
        }
        return y;
    }
}
