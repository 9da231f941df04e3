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
     * @param fits all sets that were fitted
     * @param limit largest χ²
     * @return null if no set has the cause
     */
    static CauseRange of(Cause cause, List<SetFit> fits, double limit) {
        double without =
                fits.stream()
                        .filter(f -> f.set().index(cause) < 0 && f.possible())
                        .mapToDouble(SetFit::misfit)
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
        double low = without <= limit ? 0 : Double.POSITIVE_INFINITY;
        double high = 0;
        for (SetFit fit : fits) {
            int k = fit.set().index(cause);
            double[] range = k < 0 ? null : new FitRegion(fit, limit).figures(k);
            if (range != null && range[1] > 0) {
                low = Math.min(low, range[0] > 0 ? range[0] : lowest(fit, k, limit, without));
                high = Math.max(high, range[1]);
            }
        }
        return high > 0 ? new CauseRange(Math.min(low, high), high) : null;
    }

    /**
     * The parabola at its top may reach 0 where the sets without the cause are known to miss: then
     * χ² is taken for one through the top and that miss.
     */
    private static double lowest(SetFit fit, int term, double limit, double without) {
        if (without <= limit || Double.isInfinite(without)) {
            return 0;
        }
        SetFit alone = fit.alone();
        LossTerm own = alone.set().terms().get(term);
        double top = alone.theta()[term] > 0 ? own.figure(alone.theta()[term]) : 0;
        double share = Math.sqrt((limit - fit.misfit()) / (without - fit.misfit()));
        return top > 0 ? top * (1 - share) : Double.POSITIVE_INFINITY;
    }
}
