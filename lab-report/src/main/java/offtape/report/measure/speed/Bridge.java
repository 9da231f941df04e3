package offtape.report.measure.speed;

import java.util.Arrays;

/** Puts straight lines where values are not known; at the ends the nearest value stands. */
final class Bridge {

    private double last = Double.NaN;
    private int missing;
    private int gaps;
    private long bridged;

    /** Takes values, NaN where unknown; gives those that are settled by now, in order. */
    double[] next(double[] x) {
        double[] out = new double[missing + x.length];
        int n = 0;
        for (double value : x) {
            if (Double.isNaN(value)) {
                missing++;
            } else {
                n = fill(out, n, value);
                out[n++] = value;
                last = value;
            }
        }
        return Arrays.copyOf(out, n);
    }

    /** What is missing at the end. */
    double[] rest() {
        double[] out = new double[missing];
        fill(out, 0, Double.isNaN(last) ? 0 : last);
        return out;
    }

    int gaps() {
        return gaps;
    }

    long bridgedSamples() {
        return bridged;
    }

    private int fill(double[] out, int n, double value) {
        double start = Double.isNaN(last) ? value : last;
        for (int i = 1; i <= missing; i++) {
            out[n + i - 1] = start + (value - start) * i / (missing + 1);
        }
        int end = n + missing;
        gaps += missing > 0 ? 1 : 0;
        bridged += missing;
        missing = 0;
        return end;
    }
}
