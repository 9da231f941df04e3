package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One curve.
 *
 * @param label direct label, or an empty text for none
 * @param look how it is drawn
 * @param x places along the x axis
 * @param y places along the y axis, same length
 */
record Series(String label, Look look, double[] x, double[] y) {

    private static final int POINTS_PER_STEP = 2;

    /** Refuses arrays of different length. */
    Series {
        if (x.length != y.length) {
            throw new IllegalArgumentException("a curve has as many x as y");
        }
    }

    /** Number of points. */
    int size() {
        return x.length;
    }

    /**
     * What can be drawn: points that are finite and lie on the x axis (a frequency of 0 does not
     * lie on a logarithmic one), with y no further than one axis length outside.
     */
    Series on(Axis xAxis, Axis yAxis) {
        return at(
                IntStream.range(0, size())
                        .filter(i -> xAxis.holds(x[i]) && Double.isFinite(y[i]))
                        .boxed()
                        .toList(),
                yAxis);
    }

    /**
     * At most two points for each of {@code columns} equal parts of the x axis: the lowest and the
     * highest, in the order in which they come. Curves that have no more points stay as they are.
     */
    Series thinned(Axis xAxis, Axis yAxis, int columns) {
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
        return at(kept, yAxis);
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

    private Series at(List<Integer> indices, Axis yAxis) {
        double[] newX = indices.stream().mapToDouble(i -> x[i]).toArray();
        double[] newY = indices.stream().mapToDouble(i -> yAxis.limit(y[i])).toArray();
        return new Series(label, look, newX, newY);
    }
}
