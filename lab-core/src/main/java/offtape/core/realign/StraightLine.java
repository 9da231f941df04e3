package offtape.core.realign;

import java.util.Arrays;

/**
 * The straight line through a course of time, and how well it is known. If the course is no line
 * the way it swings counts as chance: every moment then weighs alike, and the uncertainty is from
 * how far whole stretches of some seconds lie off.
 *
 * @param start frame of the return at which frame 0 lies
 * @param step frames of the return a frame lasts
 * @param middle frame of the original at which the line is known best
 * @param doubt standard uncertainty there, frames
 * @param stepDoubt standard uncertainty of the step
 */
record StraightLine(double start, double step, double middle, double doubt, double stepDoubt) {

    private static final double STRETCH_S = 4;
    private static final int ROUNDS = 3;

    /**
     * The line.
     *
     * @param base a line near it
     * @param times frames of the original
     * @param curve smoothed lateness beside the base there
     */
    static StraightLine of(Course base, double[] times, Smoothed curve, double rate) {
        double[] values = curve.values();
        double[] variances = curve.variances().clone();
        WeightedLine line = WeightedLine.through(times, values, variances);
        double swing = 0;
        for (int round = 0; round < ROUNDS && !curve.isLine(); round++) {
            swing = 0;
            for (int k = 0; k < times.length; k++) {
                double off = values[k] - line.at(times[k]);
                swing += off * off / times.length;
            }
            for (int k = 0; k < times.length; k++) {
                variances[k] = curve.variances()[k] + swing;
            }
            line = WeightedLine.through(times, values, variances);
        }
        double[] doubts = doubts(times, values, variances, line, STRETCH_S * rate);
        // a curve that is smoothed to a line has one error in common at all moments
        double own = Math.sqrt(Arrays.stream(curve.variances()).min().orElse(0));
        boolean isLine = curve.isLine();
        double doubt = isLine ? own : Math.hypot(doubts[0], own);
        double slope = isLine ? slopeDoubt(times, curve) : doubts[1];
        return new StraightLine(
                base.start() + line.at(0), base.step() + line.slope(), line.middle(), doubt, slope);
    }

    private static double slopeDoubt(double[] times, Smoothed curve) {
        double[] v = curve.variances();
        double least = Arrays.stream(v).min().orElse(0);
        int far = v[0] > v[v.length - 1] ? 0 : v.length - 1;
        int near = 0;
        for (int k = 0; k < v.length; k++) {
            near = v[k] < v[near] ? k : near;
        }
        double span = Math.abs(times[far] - times[near]);
        return span > 0 ? Math.sqrt(Math.max(0, v[far] - least)) / span : 1;
    }

    /** Standard uncertainties of value and slope from whole stretches as they lie off. */
    private static double[] doubts(
            double[] times, double[] values, double[] variances, WeightedLine line, double span) {
        double weight = 0;
        double spread = 0;
        double level = 0;
        double tilt = 0;
        double partLevel = 0;
        double partTilt = 0;
        double part = Math.floor(times[0] / span);
        for (int k = 0; k < times.length; k++) {
            double w = 1 / variances[k];
            double off = times[k] - line.middle();
            double rest = values[k] - line.at(times[k]);
            if (Math.floor(times[k] / span) != part) {
                part = Math.floor(times[k] / span);
                level += partLevel * partLevel;
                tilt += partTilt * partTilt;
                partLevel = 0;
                partTilt = 0;
            }
            weight += w;
            spread += w * off * off;
            partLevel += w * rest;
            partTilt += w * off * rest;
        }
        level += partLevel * partLevel;
        tilt += partTilt * partTilt;
        return new double[] {Math.sqrt(level) / weight, spread > 0 ? Math.sqrt(tilt) / spread : 1};
    }
}
