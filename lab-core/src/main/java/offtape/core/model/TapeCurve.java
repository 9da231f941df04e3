package offtape.core.model;

import java.util.List;

/**
 * The curve without memory of a machine: y = x − Σ share·(x − bend(x)), and c·y² on top. Slope 1 at
 * zero and, since the shares add up to 1 at most, never falling in its odd part, however far beyond
 * the levels it was fitted to. Levels are in units of the reference's peak.
 *
 * @param bends ways of flattening
 * @param shares how much of each, 0 to 1, adding up to 1 at most
 * @param even c; limited so that the whole curve does not fall up to twice the reference
 */
public record TapeCurve(List<Bend> bends, List<Double> shares, double even) {

    /** A curve that bends nothing. */
    public static final TapeCurve STRAIGHT = new TapeCurve(List.of(), List.of(), 0);

    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if the shares do not fit the bends or go beyond their limits
     */
    public TapeCurve {
        bends = List.copyOf(bends);
        shares = List.copyOf(shares);
        double sum = 0;
        for (double share : shares) {
            sum += share;
        }
        boolean fits = shares.size() == bends.size() && sum <= 1 + 1e-9;
        if (!fits || shares.stream().anyMatch(s -> s < 0)) {
            throw new IllegalArgumentException("shares must be one a bend and add up to 1 at most");
        }
    }

    /** Whether it changes nothing. */
    public boolean isStraight() {
        return bends.isEmpty() && even == 0;
    }

    /** The output. */
    public double of(double x) {
        double y = x;
        for (int i = 0; i < bends.size(); i++) {
            y -= shares.get(i) * (x - bends.get(i).of(x));
        }
        return y + even * y * y;
    }

    /**
     * What a sine of a peak becomes.
     *
     * @param peak peak at the curve, above 0
     * @return cosine amplitudes of orders 0 to 3 for a cosine, order 0 the constant part
     */
    public double[] harmonics(double peak) {
        return CurveHarmonics.of(this::of, peak);
    }

    /**
     * Fundamental and third harmonic of a sine, re its peak. The even part leaves both alone but
     * for what it adds to the third, which is of higher order.
     *
     * @param peak peak at the curve, 0 or more
     * @return two ratios; the third harmonic is negative where the curve flattens
     */
    public double[] ratios(double peak) {
        double[] sum = {1, 0};
        for (int i = 0; i < bends.size(); i++) {
            double[] own = bends.get(i).ratios(peak);
            sum[0] -= shares.get(i) * (1 - own[0]);
            sum[1] += shares.get(i) * own[1];
        }
        return sum;
    }
}
