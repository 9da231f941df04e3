package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One curve.
 *
 * @param label direct label, or an empty text for none
 * @param look how it is drawn
 * @param x places along the x axis
 * @param y places along the y axis, same length
 * @param decimals how many decimals of each y are told, same length; below 0 for tens and hundreds
 */
record Series(String label, Look look, double[] x, double[] y, int[] decimals) {

    private static final int POINTS_PER_STEP = 2;

    /** Refuses arrays of different length. */
    Series {
        if (x.length != y.length || x.length != decimals.length) {
            throw new IllegalArgumentException("a curve has as many x as y, each with decimals");
        }
    }

    /** A curve whose values are all told with so many decimals. */
    static Series of(String label, Look look, double[] x, double[] y, int decimals) {
        int[] all = new int[x.length];
        Arrays.fill(all, decimals);
        return new Series(label, look, x, y, all);
    }

    /**
     * A curve whose values are told with the decimals that their uncertainties allow.
     *
     * @param uncertainty expanded, in the unit of y, one a point
     * @param most decimals that are of use to anybody
     */
    static Series within(
            String label, Look look, double[] x, double[] y, double[] uncertainty, int most) {
        int[] decimals =
                Arrays.stream(uncertainty)
                        .mapToInt(u -> Math.min(most, Numbers.decimals(u)))
                        .toArray();
        return new Series(label, look, x, y, decimals);
    }

    /** A curve whose values are told in so many significant digits. */
    static Series significant(String label, Look look, double[] x, double[] y, int digits) {
        int[] decimals = Arrays.stream(y).mapToInt(v -> Numbers.decimals(v, digits)).toArray();
        return new Series(label, look, x, y, decimals);
    }

    /** Number of points. */
    int size() {
        return x.length;
    }

    /**
     * What can be placed: points that are finite and lie on the x axis (a frequency of 0 does not
     * lie on a logarithmic one).
     */
    Series on(Axis xAxis) {
        return at(
                IntStream.range(0, size())
                        .filter(i -> xAxis.holds(x[i]) && Double.isFinite(y[i]))
                        .toArray());
    }

    /** The same points with y no further than one axis length outside, to be drawn. */
    Series limited(Axis yAxis) {
        return new Series(label, look, x, Arrays.stream(y).map(yAxis::limit).toArray(), decimals);
    }

    /**
     * At most two points for each of {@code columns} equal parts of the x axis: the lowest and the
     * highest, in the order in which they come. Curves that have no more points stay as they are.
     */
    Series thinned(Axis xAxis, int columns) {
        if (size() <= POINTS_PER_STEP * columns || look == Look.EXTREMES) {
            return this;
        }
        List<Integer> kept = new ArrayList<>();
        int from = 0;
        while (from < size()) {
            int to = from + 1;
            int column = column(xAxis, from, columns);
            while (to < size() && column(xAxis, to, columns) == column) {
                to++;
            }
            keepExtremes(from, to, kept);
            from = to;
        }
        return at(kept.stream().mapToInt(Integer::intValue).toArray());
    }

    private int column(Axis xAxis, int i, int columns) {
        return (int) (xAxis.fraction(x[i]) * columns);
    }

    private void keepExtremes(int from, int to, List<Integer> kept) {
        int low = from;
        int high = from;
        for (int i = from; i < to; i++) {
            low = y[i] < y[low] ? i : low;
            high = y[i] > y[high] ? i : high;
        }
        kept.add(Math.min(low, high));
        if (low != high) {
            kept.add(Math.max(low, high));
        }
    }

    private Series at(int[] indices) {
        return new Series(
                label,
                look,
                Arrays.stream(indices).mapToDouble(i -> x[i]).toArray(),
                Arrays.stream(indices).mapToDouble(i -> y[i]).toArray(),
                Arrays.stream(indices).map(i -> decimals[i]).toArray());
    }
}
