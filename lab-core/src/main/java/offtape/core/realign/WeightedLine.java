package offtape.core.realign;

/**
 * A straight line by weighted least squares.
 *
 * @param middle weighted mean of the times
 * @param value of the line there
 * @param slope of the line
 * @param valueVariance of the value if the weights are right
 * @param slopeVariance of the slope likewise
 */
record WeightedLine(
        double middle, double value, double slope, double valueVariance, double slopeVariance) {

    /**
     * The line.
     *
     * @param times at least one; with one the line is level
     * @param variances above 0
     */
    static WeightedLine through(double[] times, double[] values, double[] variances) {
        double weight = 0;
        double time = 0;
        double value = 0;
        for (int k = 0; k < times.length; k++) {
            double w = 1 / variances[k];
            weight += w;
            time += w * times[k];
            value += w * values[k];
        }
        double middle = time / weight;
        double mean = value / weight;
        double spread = 0;
        double tilt = 0;
        for (int k = 0; k < times.length; k++) {
            double off = times[k] - middle;
            spread += off * off / variances[k];
            tilt += off * (values[k] - mean) / variances[k];
        }
        return spread > 0
                ? new WeightedLine(middle, mean, tilt / spread, 1 / weight, 1 / spread)
                : new WeightedLine(middle, mean, 0, 1 / weight, 1);
    }

    double at(double time) {
        return value + slope * (time - middle);
    }

    /** Variance of the line at a time if the weights are right. */
    double variance(double time) {
        double off = time - middle;
        return valueVariance + off * off * slopeVariance;
    }
}
