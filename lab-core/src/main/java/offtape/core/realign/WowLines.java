package offtape.core.realign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Looks for lines of wow in scattered delays, so that they carry the course where nothing sounds.
 */
final class WowLines {

    private static final double LOWEST_HZ = 0.2;
    private static final double HIGHEST_HZ = 10;
    private static final double PART_S = 40;
    private static final double MEMORY_S = 30;
    private static final int MOST = 3;

    /** A line explains at least this share of what is left in its parts. */
    private static final double LEAST_SHARE = 0.1;

    private final double[] times;
    private final double[] weights;
    private final double[] rest;
    private final double rate;

    WowLines(double[] times, double[] values, double[] variances, double rate) {
        this.times = times;
        this.rate = rate;
        WeightedLine line = WeightedLine.through(times, values, variances);
        this.rest = new double[times.length];
        double swing = 0;
        int read = 0;
        for (int k = 0; k < rest.length; k++) {
            boolean isRead = Double.isFinite(variances[k]);
            rest[k] = isRead ? values[k] - line.at(times[k]) : 0;
            swing += rest[k] * rest[k];
            read += isRead ? 1 : 0;
        }
        this.weights = new double[times.length];
        for (int k = 0; k < rest.length; k++) {
            weights[k] = 1 / (variances[k] + 0.1 * swing / read);
        }
    }

    /** The lines, the strongest first; candidates that are yet to be tried. */
    List<WowLine> find() {
        List<WowLine> found = new ArrayList<>();
        double span = Math.min(PART_S * rate, times[times.length - 1] - times[0]);
        if (span < 3 * rate) {
            return found;
        }
        double grid = 0.25 / span;
        int bins = (int) ((HIGHEST_HZ - LOWEST_HZ) / rate / grid);
        for (int n = 0; n < MOST; n++) {
            double[] power = spectrum(span, grid, bins);
            int best = 1;
            for (int i = 1; i < bins - 1; i++) {
                best = power[i] > power[best] ? i : best;
            }
            if (!(power[best] > LEAST_SHARE * total())) {
                break;
            }
            double bend = power[best - 1] - 2 * power[best] + power[best + 1];
            double move = bend < 0 ? 0.5 * (power[best - 1] - power[best + 1]) / bend : 0;
            double turns = LOWEST_HZ / rate + (best + Math.max(-0.5, Math.min(0.5, move))) * grid;
            double omega = 2 * Math.PI * turns;
            found.add(new WowLine(omega, take(omega, span), MEMORY_S * rate));
        }
        return found;
    }

    private double total() {
        double sum = 0;
        for (int k = 0; k < rest.length; k++) {
            sum += weights[k] * rest[k] * rest[k];
        }
        return sum;
    }

    private double[] spectrum(double span, double grid, int bins) {
        double[] power = new double[bins];
        for (int from = 0; from < times.length; from = end(from, span)) {
            int to = end(from, span);
            for (int i = 0; i < bins; i++) {
                double omega = 2 * Math.PI * (LOWEST_HZ / rate + i * grid);
                power[i] += new Swing(from, to, omega).explained();
            }
        }
        return power;
    }

    private int end(int from, double span) {
        int k = Arrays.binarySearch(times, times[from] + span);
        return Math.max(from + 1, k >= 0 ? k : -k - 1);
    }

    /** Takes a line out of the rest, part by part; its mean square. */
    private double take(double omega, double span) {
        double sum = 0;
        for (int from = 0; from < times.length; from = end(from, span)) {
            int to = end(from, span);
            Swing swing = new Swing(from, to, omega);
            for (int k = from; k < to; k++) {
                rest[k] -= swing.at(times[k]);
            }
            sum += (to - from) * 0.5 * (swing.a * swing.a + swing.b * swing.b);
        }
        return sum / times.length;
    }

    /** A sine by weighted least squares through some of the rest. */
    private final class Swing {

        private final double omega;
        private final double begin;
        private double a;
        private double b;
        private double x;
        private double y;

        Swing(int from, int to, double omega) {
            this.omega = omega;
            this.begin = times[from];
            double cc = 1e-12;
            double cs = 0;
            double ss = 1e-12;
            for (int k = from; k < to; k++) {
                double w = weights[k];
                double cos = Math.cos(omega * (times[k] - begin));
                double sin = Math.sin(omega * (times[k] - begin));
                cc += w * cos * cos;
                cs += w * cos * sin;
                ss += w * sin * sin;
                x += w * cos * rest[k];
                y += w * sin * rest[k];
            }
            double det = cc * ss - cs * cs;
            boolean isKnown = det > 0.05 * cc * ss;
            a = isKnown ? (x * ss - y * cs) / det : 0;
            b = isKnown ? (y * cc - x * cs) / det : 0;
        }

        double explained() {
            return a * x + b * y;
        }

        double at(double time) {
            return a * Math.cos(omega * (time - begin)) + b * Math.sin(omega * (time - begin));
        }
    }
}
