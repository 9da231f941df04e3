package offtape.report.measure.loss;

import java.util.List;

/**
 * What a curve leaves open of one cause: the lowest and highest figure that some set of causes
 * explains as well as the best one (profile likelihood: χ² no more above the least than {@link
 * Weighing#AS_WELL}).
 *
 * <p>Source: W. A. Rolke, A. M. López, J. Conrad, Limits and confidence intervals in the presence
 * of nuisance parameters, Nuclear Instruments and Methods A 551 (2005), 493-503.
 *
 * @param low 0 if the curve can be explained without the cause
 * @param high the largest figure
 */
record CauseRange(double low, double high) {

    /**
     * The range of a cause.
     *
     * @param limit largest χ²
     * @return null if no set has the cause
     */
    static CauseRange of(Cause cause, List<SetFit> fits, double limit) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        boolean found = false;
        for (SetFit fit : fits) {
            int k = fit.set().index(cause);
            if (k < 0) {
                low = fit.possible() && fit.misfit() <= limit ? 0 : low;
                continue;
            }
            double[] range = new FitRegion(fit, limit).figures(k);
            if (range != null) {
                low = Math.min(low, range[0]);
                high = Math.max(high, range[1]);
                found = true;
            }
        }
        return found ? new CauseRange(low, high) : null;
    }
}
