package offtape.core.realign;

import java.util.List;

/**
 * A curve through scattered delays.
 *
 * @param values at the times of the delays, frames
 * @param slopes there, a ratio
 * @param variances of the values, frames squared
 * @param roughness variance by which the speed wanders in a frame, that made the delays likeliest
 * @param scale by how much the delays scatter more than was thought, as a variance, at least 1
 * @param likelihood natural logarithm, but for a constant
 * @param lines of wow in it
 */
record Smoothed(
        double[] values,
        double[] slopes,
        double[] variances,
        double roughness,
        double scale,
        double likelihood,
        List<WowLine> lines) {

    /** Whether it is a straight line. */
    boolean isLine() {
        return roughness == 0 && lines.isEmpty();
    }

    /** The same curve beside another line. */
    Smoothed beside(WeightedLine line, double[] times) {
        double[] moved = new double[values.length];
        double[] turned = new double[values.length];
        for (int k = 0; k < moved.length; k++) {
            moved[k] = values[k] + line.at(times[k]);
            turned[k] = slopes[k] + line.slope();
        }
        return new Smoothed(moved, turned, variances, roughness, scale, likelihood, lines);
    }
}
