package offtape.core.model;

/**
 * One way in which a tape or an amplifier flattens: odd, of slope 1 at zero, never falling.
 *
 * @param shape how it flattens
 * @param limit where it is flat or nearly so, in units of the reference's peak, above 0: the input
 *     from which {@link Shape#CUBIC} is flat, the output that {@link Shape#TANH} never reaches
 */
public record Bend(Shape shape, double limit) {

    /** How a curve flattens. */
    public enum Shape {
        /** d·tanh(x/d). */
        TANH,
        /** x − x³/(3d²) up to d, flat beyond. */
        CUBIC
    }

    /** The output. */
    public double of(double x) {
        double place = x / limit;
        if (shape == Shape.TANH) {
            return limit * StrictMath.tanh(place);
        }
        double inside = Math.max(-1, Math.min(1, place));
        return limit * (inside - inside * inside * inside / 3);
    }

    /**
     * Fundamental and third harmonic of a cosine, re its peak.
     *
     * @param peak peak of the cosine, 0 or more
     * @return two ratios; the third harmonic is negative, as the curve flattens
     */
    public double[] ratios(double peak) {
        return BendRatios.of(shape).at(peak / limit);
    }
}
