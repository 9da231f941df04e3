package offtape.report.result;

/** Lists of numbers that stand side by side, so that each row says one thing. */
final class Columns {

    private Columns() {}

    /**
     * The same of lists with gaps.
     *
     * @throws IllegalArgumentException if one has not so many rows
     */
    static void requireEven(int rows, Double[]... columns) {
        for (Double[] column : columns) {
            if (column == null || column.length != rows) {
                throw new IllegalArgumentException("lists of numbers do not belong together");
            }
        }
    }

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
}
