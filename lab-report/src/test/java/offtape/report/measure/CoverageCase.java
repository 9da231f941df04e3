package offtape.report.measure;

import offtape.core.unit.Quantity;

/**
 * One figure of one machine, or of one channel of it.
 *
 * @param figure name for the table
 * @param unit of the rest
 * @param found what was measured
 * @param uncertainty what was stated, k = 2
 * @param truth what it should have been
 */
record CoverageCase(
        String machine,
        String figure,
        String unit,
        double found,
        double uncertainty,
        double truth) {

    /** A figure that is known. */
    static CoverageCase of(String machine, String figure, Quantity found, double truth) {
        return new CoverageCase(
                machine, figure, found.unit(), found.value(), found.uncertainty(), truth);
    }

    /** Whether the truth lies within the stated interval. */
    boolean holds() {
        return Math.abs(found - truth) <= uncertainty;
    }

    /** Distance from the truth as a share of the uncertainty. */
    double share() {
        return uncertainty > 0 ? Math.abs(found - truth) / uncertainty : Double.POSITIVE_INFINITY;
    }
}
