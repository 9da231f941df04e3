package offtape.report.measure.speed;

/**
 * Drift: straight lines through some seconds, and how far they reach. Hann's weights keep wow out
 * of them, which would leak past a window with edges. Blackman's let other parts of it through, so
 * that the two differ by about as much as wow moves either.
 */
final class Drift {

    private static final double WINDOW_S = 10;

    /** Neighbouring values that are averaged first. */
    private static final int JOINED = 10;

    private static final int PLACES_A_WINDOW = 20;

    private final double[] window;
    private final int hop;
    private double sum;
    private int summed;
    private long points;
    private boolean ended;
    private final Reach hann = new Reach();
    private final Reach blackman = new Reach();

    Drift(double rateHz) {
        hop = (int) (WINDOW_S * rateHz / JOINED / PLACES_A_WINDOW);
        window = new double[hop * PLACES_A_WINDOW];
    }

    /** Takes values of the deviation. */
    void next(double[] x) {
        for (double v : x) {
            sum += v;
            summed++;
            if (summed == JOINED) {
                point(sum / JOINED);
                sum = 0;
                summed = 0;
            }
        }
    }

    private void point(double value) {
        window[(int) (points % window.length)] = value;
        points++;
        if (points == window.length) {
            read(0, window.length / 2);
        } else if (points > window.length && points % hop == 0) {
            read(window.length / 2, window.length / 2);
        }
    }

    /** Reads the line at places of the window, counted from its oldest point. */
    private void read(int from, int to) {
        WeightedLine soft = new WeightedLine();
        WeightedLine softer = new WeightedLine();
        for (int i = 0; i < window.length; i++) {
            double turn = 2 * Math.PI * (i + 0.5) / window.length;
            double value = window[(int) ((points + i) % window.length)];
            soft.add(i, value, 1 - Math.cos(turn));
            softer.add(i, value, 0.42 - 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn));
        }
        for (int at = from; at <= to; at += hop) {
            hann.add(soft.at(at));
            blackman.add(softer.at(at));
        }
    }

    /** From the lowest to the highest line, after the last value; 0 for less than a window. */
    double reach() {
        if (points < window.length) {
            return 0;
        }
        if (!ended) {
            read(window.length / 2, window.length);
            ended = true;
        }
        return hann.length();
    }

    /** How far wow may have moved it, after {@link #reach}. */
    double doubt() {
        return points < window.length ? 0 : Math.abs(hann.length() - blackman.length());
    }

    /** From the lowest to the highest of some values. */
    private static final class Reach {

        private double lowest = Double.POSITIVE_INFINITY;
        private double highest = Double.NEGATIVE_INFINITY;

        void add(double value) {
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
        }

        double length() {
            return highest - lowest;
        }
    }

    /** A straight line by weighted least squares. */
    private static final class WeightedLine {

        private double w;
        private double wx;
        private double wy;
        private double wxx;
        private double wxy;

        void add(double x, double y, double weight) {
            w += weight;
            wx += weight * x;
            wy += weight * y;
            wxx += weight * x * x;
            wxy += weight * x * y;
        }

        double at(double x) {
            double slope = (w * wxy - wx * wy) / (w * wxx - wx * wx);
            return wy / w + slope * (x - wx / w);
        }
    }
}
