package offtape.report.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The values behind a drawing, for the script that reads them off: exact up to the decimals that
 * are told, a row of differences a curve. {@code charts/values.js} is the other end of this code.
 */
final class Told {

    private static final String LETTERS =
            "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

    /** Values beyond are not told exactly: they and their decimals have to be whole numbers. */
    private static final double MOST = 1e9;

    /**
     * Digits of an axis end: a thousandth of a drawing unit, and fewer than results keep, so that a
     * page of kept results is the same as that of fresh ones.
     */
    private static final int END_DIGITS = 6;

    /** Mantissas of three digits, 100 to 999. */
    private static final int MANTISSAS = 900;

    private final Chart chart;
    private final List<Plot.Curve> drawn;

    private Told(Chart chart, List<Plot.Curve> drawn) {
        this.chart = chart;
        this.drawn = drawn;
    }

    /** An element a curve, to stand in the drawing; it shows nothing. */
    static Markup of(Chart chart, List<Plot.Curve> drawn) {
        return new Told(chart, drawn).markup();
    }

    /** What the script has to know of an axis: its ends, and its scale or the decimals of x. */
    static String ends(Axis axis) {
        return plain(axis.min())
                + " "
                + plain(axis.max())
                + " "
                + (axis.logarithmic() ? "log" : Integer.toString(axis.decimals()));
    }

    private Markup markup() {
        Markup out = new Markup();
        String last = "";
        for (Series series : curves()) {
            String x = x(series);
            out.empty(
                    "g",
                    "class",
                    "told " + series.look().cssClass(),
                    "data-name",
                    series.label(),
                    "data-x",
                    x.equals(last) ? "" : x,
                    "data-y",
                    y(series),
                    "data-decimals",
                    decimals(series.decimals()));
            last = x;
        }
        return out;
    }

    private List<Series> curves() {
        Stream<Series> lines =
                chart.told().isEmpty()
                        ? drawn.stream()
                                .map(Plot.Curve::series)
                                .filter(s -> s.look() != Look.EXTREMES)
                        : chart.told().stream().map(s -> s.on(chart.x()));
        return Stream.concat(lines, marks()).filter(s -> s.size() > 0).toList();
    }

    /** The marks as one curve whose points have names of their own, from left to right. */
    private Stream<Series> marks() {
        List<Chart.Mark> marks =
                chart.marks().stream()
                        .filter(m -> chart.x().holds(m.x()))
                        .sorted(Comparator.comparingDouble(Chart.Mark::x))
                        .toList();
        if (marks.isEmpty()) {
            return Stream.empty();
        }
        return Stream.of(
                new Series(
                        marks.stream()
                                .map(m -> m.label().replace('\n', ' '))
                                .collect(Collectors.joining("\n")),
                        Look.WHOLE,
                        marks.stream().mapToDouble(Chart.Mark::x).toArray(),
                        marks.stream().mapToDouble(Chart.Mark::y).toArray(),
                        marks.stream().mapToInt(Chart.Mark::decimals).toArray()));
    }

    private String x(Series series) {
        Axis axis = chart.x();
        return packed(
                Arrays.stream(series.x())
                        .mapToLong(
                                x ->
                                        axis.logarithmic()
                                                ? threeDigits(x)
                                                : units(x, axis.decimals(), axis.decimals()))
                        .toArray());
    }

    private static String y(Series series) {
        int scale = Math.max(0, Arrays.stream(series.decimals()).max().orElse(0));
        long[] units = new long[series.size()];
        for (int i = 0; i < units.length; i++) {
            units[i] = units(series.y()[i], series.decimals()[i], scale);
        }
        return packed(units);
    }

    /** {@code value} rounded to {@code decimals}, in units of the decimal place {@code scale}. */
    private static long units(double value, int decimals, int scale) {
        double within = Math.max(-MOST, Math.min(MOST, value));
        return new BigDecimal(within)
                .setScale(decimals, RoundingMode.HALF_UP)
                .movePointRight(scale)
                .longValueExact();
    }

    /**
     * A number above 0 in three digits, numbered so that each next number of three digits follows.
     */
    private static long threeDigits(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(3, RoundingMode.HALF_UP));
        int exponent = rounded.precision() - rounded.scale() - 1;
        long mantissa = rounded.movePointRight(2 - exponent).longValueExact();
        return (long) MANTISSAS * exponent + mantissa - 100;
    }

    /** {@code 2} if all have two, else runs such as {@code 1x9 2x230}. */
    private static String decimals(int[] each) {
        StringBuilder runs = new StringBuilder();
        int from = 0;
        for (int i = 1; i <= each.length; i++) {
            if (i == each.length || each[i] != each[from]) {
                boolean isAll = from == 0 && i == each.length;
                runs.append(from == 0 ? "" : " ").append(each[from]);
                runs.append(isAll ? "" : "x" + (i - from));
                from = i;
            }
        }
        return runs.toString();
    }

    /**
     * Whole numbers as their differences, each in as few letters as it needs: five bits a letter
     * from the lowest, the sixth says that more follow; 2n stands for n and 2n − 1 for −n.
     */
    static String packed(long[] values) {
        StringBuilder out = new StringBuilder();
        long last = 0;
        for (long value : values) {
            long step = value - last;
            long rest = step < 0 ? -2 * step - 1 : 2 * step;
            while (rest > 31) {
                out.append(LETTERS.charAt((int) (32 + rest % 32)));
                rest /= 32;
            }
            out.append(LETTERS.charAt((int) rest));
            last = value;
        }
        return out.toString();
    }

    private static String plain(double value) {
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(END_DIGITS, RoundingMode.HALF_UP));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
