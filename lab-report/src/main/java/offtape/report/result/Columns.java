package offtape.report.result;

import java.util.stream.DoubleStream;
import offtape.core.json.Range;

/** Lists of numbers that stand side by side, so that each row says one thing. */
final class Columns {

    /** Beyond anything that is measured, and yet its power is a number, dB. */
    private static final double MOST_DB = 1000;

    private Columns() {}

    /**
     * Checks that all are there and equally long, since results are also read from files.
     *
     * @throws IllegalArgumentException if not
     */
    static void requireEven(double[]... columns) {
        for (double[] column : columns) {
            if (column == null || column.length != columns[0].length) {
                throw new IllegalArgumentException("lists of numbers do not belong together");
            }
        }
    }

    /**
     * Checks that frequencies are above 0 and rise.
     *
     * @throws offtape.core.fault.UnusableInputException if not
     */
    static void requireRising(String name, double... frequencyHz) {
        double before = 0;
        for (double hz : frequencyHz) {
            Range.require(hz > before, "\"" + name + "\" does not rise from above 0 Hz.");
            before = hz;
        }
    }

    /**
     * Checks that levels can be taken for powers.
     *
     * @throws offtape.core.fault.UnusableInputException if not
     */
    static void requireLevels(String name, double... db) {
        Range.require(
                DoubleStream.of(db).allMatch(x -> Math.abs(x) <= MOST_DB),
                "\"" + name + "\" holds a level beyond 1000 dB, up or down.");
    }
}
