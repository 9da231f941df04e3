package offtape.report.render;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * One axis of a chart.
 *
 * @param title quantity and unit
 * @param min lowest value, above 0 if logarithmic
 * @param max highest value, above {@code min}
 * @param logarithmic whether equal ratios take equal lengths
 * @param ticks labelled places, all between {@code min} and {@code max}
 * @param ranks whether places only order things and are no values
 */
record Axis(
        String title,
        double min,
        double max,
        boolean logarithmic,
        List<Tick> ticks,
        boolean ranks) {

    /** At most so many steps from tick to tick make a linear axis. */
    private static final double STEPS = 8;

    /** What is told of a place on the axis is finer than its ticks by this. */
    private static final double PARTS_OF_A_STEP = 50;

    private static final String UNIT = ", ";
    private static final double[] FREQUENCIES = {
        10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 40000
    };
    private static final double[] ONE_TWO_FIVE = {1, 2, 5};
    private static final double[] ONE_THREE = {1, 3};

    /** Refuses ranges that cannot be drawn and leaves out ticks beyond them. */
    Axis {
        if (!(min < max) || !Double.isFinite(min) || !Double.isFinite(max)) {
            throw new IllegalArgumentException("an axis runs from a lower to a higher value");
        }
        if (logarithmic && min <= 0) {
            throw new IllegalArgumentException("a logarithmic axis starts above 0");
        }
        double low = min - 1e-9 * Math.abs(min);
        double high = max + 1e-9 * Math.abs(max);
        ticks = ticks.stream().filter(t -> t.value() >= low && t.value() <= high).toList();
    }

    /** Audio frequencies on a logarithmic scale with the trade's usual ticks. */
    static Axis audioFrequency(Wording words, double minHz, double maxHz) {
        List<Tick> ticks =
                DoubleStream.of(FREQUENCIES)
                        .mapToObj(f -> new Tick(f, f < 1000 ? plain(f) : plain(f / 1000) + "k"))
                        .toList();
        return new Axis(words.say("page.axis-frequency"), minHz, maxHz, true, ticks, false);
    }

    /** A linear axis with some five to eight round ticks. */
    static Axis linear(String title, double min, double max) {
        double step = niceStep((max - min) / STEPS);
        long first = Math.round(Math.ceil(min / step - 1e-9));
        long last = Math.round(Math.floor(max / step + 1e-9));
        List<Tick> ticks =
                java.util.stream.LongStream.rangeClosed(first, last)
                        .mapToObj(i -> new Tick(i * step, i == 0 ? "0" : even(i * step, step)))
                        .toList();
        return new Axis(title, min, max, false, ticks, false);
    }

    /** An axis of rows, the first at 1, whose ticks name them. */
    static Axis rows(String title, int rows, List<Tick> names) {
        return new Axis(title, 0.4, rows + 0.6, false, names, true);
    }

    /** A logarithmic axis with ticks at 1, 2 and 5 of each decade. */
    static Axis oneTwoFive(String title, double min, double max) {
        return new Axis(title, min, max, true, decades(min, max, ONE_TWO_FIVE), false);
    }

    /** A logarithmic axis with ticks at 1 and 3 of each decade. */
    static Axis oneThree(String title, double min, double max) {
        return new Axis(title, min, max, true, decades(min, max, ONE_THREE), false);
    }

    /** How many decimals tell apart what the axis can show; of a logarithmic one it is not used. */
    int decimals() {
        double step = niceStep((max - min) / STEPS) / PARTS_OF_A_STEP;
        return Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
    }

    /** What is plotted: {@code Record level} of {@code Record level, dB re reference}. */
    String quantity() {
        return quantity(title);
    }

    /** What a title tells of beside its unit. */
    static String quantity(String title) {
        int comma = title.lastIndexOf(UNIT);
        return comma < 0 ? title : title.substring(0, comma);
    }

    /** The unit, empty if there is none: {@code dB re reference} of the above. */
    String unit() {
        int comma = title.lastIndexOf(UNIT);
        return comma < 0 ? "" : title.substring(comma + UNIT.length());
    }

    /** Where {@code value} lies between {@code min} (0) and {@code max} (1). */
    double fraction(double value) {
        return logarithmic
                ? Math.log(value / min) / Math.log(max / min)
                : (value - min) / (max - min);
    }

    /** Whether {@code value} can be placed on the axis. */
    boolean holds(double value) {
        return value >= min && value <= max;
    }

    /** {@code value}, or a value one axis length beyond the nearer end if it lies further out. */
    double limit(double value) {
        double low = logarithmic ? min * min / max : 2 * min - max;
        double high = logarithmic ? max * max / min : 2 * max - min;
        return Math.max(low, Math.min(high, value));
    }

    /** The smallest of 1, 2, 5, 10 … times a power of ten that is not below {@code least}. */
    static double niceStep(double least) {
        double decade = decade(Math.log10(least));
        for (double step : ONE_TWO_FIVE) {
            if (step * decade >= least * (1 - 1e-9)) {
                return step * decade;
            }
        }
        return 10 * decade;
    }

    /** The power of ten at or below 10 to the {@code exponent}. */
    static double decade(double exponent) {
        return Double.parseDouble("1e" + (int) Math.floor(exponent + 1e-9));
    }

    private static List<Tick> decades(double min, double max, double[] steps) {
        int first = (int) Math.floor(Math.log10(min) + 1e-9);
        int last = (int) Math.ceil(Math.log10(max) - 1e-9);
        return java.util.stream.IntStream.rangeClosed(first, last)
                .boxed()
                .flatMap(
                        e ->
                                DoubleStream.of(steps)
                                        .mapToObj(s -> Double.parseDouble(s + "e" + e))
                                        .map(v -> new Tick(v, plain(v))))
                .toList();
    }

    /** With as many decimals as every other tick of the axis. */
    private static String even(double value, double step) {
        return Numbers.decimal(value, Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9)));
    }

    private static String plain(double value) {
        return Numbers.significant(value, 6);
    }
}
