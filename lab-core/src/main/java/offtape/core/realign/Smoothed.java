package offtape.core.realign;

/**
 * A curve through scattered delays.
 *
 * @param values at the times of the delays, frames
 * @param slopes there, a ratio
 * @param variances of the values, frames squared
 * @param roughness variance by which the speed wanders in a frame, that made the delays likeliest;
 *     0 for a straight line
 * @param scale by how much the delays scatter more than was thought, as a variance, at least 1
 * @param likelihood natural logarithm, but for a constant
 */
record Smoothed(
        double[] values,
        double[] slopes,
        double[] variances,
        double roughness,
        double scale,
        double likelihood) {}
