package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Points of the curves of a chart as a table, where no other table holds them. */
final class ChartTable {

    /** Rows enough to see the course, few enough to print. */
    private static final int MOST_ROWS = 12;

    private ChartTable() {}

    /** A row for some points of the first curve, evenly among its points, both ends with them. */
    static DataTable of(Wording words, Chart chart) {
        List<Series> curves =
                (chart.told().isEmpty() ? chart.series() : chart.told())
                        .stream()
                                .filter(s -> !chart.told().isEmpty() || s.look() != Look.EXTREMES)
                                .map(s -> s.on(chart.x()))
                                .filter(s -> s.size() > 0)
                                .toList();
        String caption = words.say("page.some-points", words.small(chart.title()));
        if (curves.isEmpty()) {
            return new DataTable(caption, List.of(), List.of());
        }
        double[] x = curves.get(0).x();
        int rows = Math.min(MOST_ROWS, x.length);
        return new DataTable(
                caption,
                heads(chart, curves),
                IntStream.range(0, rows)
                        .map(
                                i ->
                                        rows == 1
                                                ? 0
                                                : (int)
                                                        Math.round(
                                                                (double) i
                                                                        * (x.length - 1)
                                                                        / (rows - 1)))
                        .mapToObj(i -> row(words, chart, curves, x[i]))
                        .toList());
    }

    private static List<String> heads(Chart chart, List<Series> curves) {
        List<String> heads = new ArrayList<>();
        heads.add(isFrequency(chart.x()) ? chart.x().quantity() : chart.x().title());
        for (Series s : curves) {
            heads.add(
                    s.label().isEmpty() ? chart.y().title() : s.label() + ", " + chart.y().unit());
        }
        return List.copyOf(heads);
    }

    private static List<String> row(Wording words, Chart chart, List<Series> curves, double x) {
        List<String> cells = new ArrayList<>();
        cells.add(
                isFrequency(chart.x())
                        ? words.frequency(x)
                        : chart.x().logarithmic()
                                ? words.significant(x, 3)
                                : number(words, chart.x(), x, chart.x().decimals()));
        for (Series s : curves) {
            int i = nearest(s.x(), x);
            cells.add(number(words, chart.y(), s.y()[i], s.decimals()[i]));
        }
        return List.copyOf(cells);
    }

    private static boolean isFrequency(Axis axis) {
        return axis.unit().equals("Hz");
    }

    private static String number(Wording words, Axis axis, double value, int decimals) {
        int shown = Math.max(0, decimals);
        return axis.min() < 0 && !axis.logarithmic()
                ? words.signed(value, shown)
                : words.decimal(value, shown);
    }

    private static int nearest(double[] all, double wanted) {
        int best = 0;
        for (int i = 1; i < all.length; i++) {
            best = Math.abs(all[i] - wanted) < Math.abs(all[best] - wanted) ? i : best;
        }
        return best;
    }
}
