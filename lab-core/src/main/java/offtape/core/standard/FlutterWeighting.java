package offtape.core.standard;

import offtape.reference.ReferenceTable;

/**
 * The weighting curve of IEC 60386 at any frequency: through the table's points, smooth between
 * them over the logarithm of frequency, 18 dB an octave below the table and 6 dB above.
 */
final class FlutterWeighting {

    private static final double BELOW_DB_PER_OCTAVE = 18;
    private static final double ABOVE_DB_PER_OCTAVE = -6;
    private static final int OCTAVES_BEYOND = 3;
    private static final ReferenceTable TABLE = ReferenceTable.load("wf-weighting-iec60386");
    private static final double[] ROWS_HZ = TABLE.numbers("frequency");
    private static final double[] ROWS_DB = TABLE.numbers("weighting");
    private static final MonotoneCubic CURVE = curve(TABLE);

    private FlutterWeighting() {}

    /** Weighting in dB re 4 Hz at a frequency in hertz above 0. */
    static double atHz(double frequencyHz) {
        return CURVE.applyAsDouble(octaves(frequencyHz));
    }

    /** Number of rows of the table. */
    static int rows() {
        return ROWS_HZ.length;
    }

    /**
     * Where a frequency lies among the rows: that of the row at or below it, and the share of the
     * way to the next over the logarithm of frequency; 0 and the last row beyond the ends.
     */
    static double place(double frequencyHz) {
        int last = ROWS_HZ.length - 1;
        if (frequencyHz <= ROWS_HZ[0]) {
            return 0;
        }
        if (frequencyHz >= ROWS_HZ[last]) {
            return last;
        }
        int row = 0;
        while (ROWS_HZ[row + 1] <= frequencyHz) {
            row++;
        }
        return row
                + Math.log(frequencyHz / ROWS_HZ[row]) / Math.log(ROWS_HZ[row + 1] / ROWS_HZ[row]);
    }

    /** Straight lines between the rows over the logarithm of frequency; dB re 4 Hz. */
    static double straightAtHz(double frequencyHz) {
        double place = place(frequencyHz);
        int row = (int) place;
        if (row == ROWS_HZ.length - 1 || place == 0) {
            return atHz(frequencyHz);
        }
        return ROWS_DB[row] + (place - row) * (ROWS_DB[row + 1] - ROWS_DB[row]);
    }

    // Points beyond both ends carry the final slopes, so that the curve has no kink there.
    private static MonotoneCubic curve(ReferenceTable table) {
        double[] f = table.numbers("frequency");
        double[] w = table.numbers("weighting");
        int n = f.length;
        double[] x = new double[n + 2 * OCTAVES_BEYOND];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            int row = Math.max(0, Math.min(n - 1, i - OCTAVES_BEYOND));
            int beyond = i - OCTAVES_BEYOND - row;
            x[i] = octaves(f[row]) + beyond;
            y[i] = w[row] + beyond * (beyond < 0 ? BELOW_DB_PER_OCTAVE : ABOVE_DB_PER_OCTAVE);
        }
        return new MonotoneCubic(x, y);
    }

    private static double octaves(double frequencyHz) {
        return Math.log(frequencyHz) / Math.log(2);
    }
}
