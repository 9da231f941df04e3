package offtape.report.measure.pass;

/**
 * A line that was seen in several replays, parted into a pointer that stands still, the tape's, and
 * one of constant length that has fallen into a phase of its own in each replay: the pointers of
 * the replays lie on a ring whose centre is the tape's and whose radius is the replay's.
 *
 * <p>Three replays fix a ring, two do not, and three that lie close together hardly do. So no ring
 * is fitted; all rings are weighed by how likely they make what was seen (Bayes): a distance d from
 * the centre has the Rice density exp(−(d − a)²/2σ²)·I₀(a·d/σ²)·exp(−a·d/σ²)/(2πσ²) for the radius
 * a. Before the measurement all lengths of both pointers count as equally likely, and all phases.
 *
 * @param still length of the pointer that stands still
 * @param turning length of the other
 */
record RingPosterior(Range still, Range turning) {

    /**
     * What is known of a length.
     *
     * @param low lower end of what holds 95.45 %
     * @param middle median
     * @param high upper end
     */
    record Range(double low, double middle, double high) {

        /** The power of a sine of that peak. */
        Share share() {
            double power = middle * middle / 2;
            double reach = Math.max(high * high / 2 - power, power - low * low / 2);
            return new Share(power, reach);
        }

        /** The same if both parts of the pointer err by so much more, one standard deviation. */
        Range blurred(double sigma) {
            return new Range(
                    Math.max(0, middle - Math.hypot(middle - low, 2 * sigma)),
                    middle,
                    middle + Math.hypot(high - middle, 2 * sigma));
        }

        /** How far the ends lie from the middle at most. */
        double reach() {
            return Math.max(high - middle, middle - low);
        }
    }

    /** A part's unrest repeats no better than this, as a share of the longest pointer. */
    private static final double LEAST_SIGMA = 0.01;

    private static final double EXTENT = 4;
    private static final int MOST_STEPS = 500;
    private static final double UNLIKELY = 25;
    private static final int RADII = 13;
    private static final double TAIL = 0.02275;
    private static final int CLASSES = 4000;

    /**
     * Weighs rings.
     *
     * @param z pointers, one a replay, {cosine, sine}; two or more, not all nothing
     * @param noise standard deviation of either part of a pointer by noise of its own
     * @param common the same by noise that all pointers share
     */
    static RingPosterior of(double[][] z, double noise, double common) {
        double longest = 0;
        for (double[] pointer : z) {
            longest = Math.max(longest, Math.hypot(pointer[0], pointer[1]));
        }
        double sigma = Math.max(noise, LEAST_SIGMA * longest);
        double extent = EXTENT * Math.max(longest, sigma);
        Weights still = new Weights(2 * extent);
        Weights turning = new Weights(2 * extent);
        int steps = (int) Math.min(MOST_STEPS, Math.ceil(extent / sigma));
        double step = extent / steps;
        double[] distance = new double[z.length];
        double blur = Math.max(sigma, step);
        for (int i = -steps; i < steps; i++) {
            for (int j = -steps; j < steps; j++) {
                double x = (i + 0.5) * step;
                double y = (j + 0.5) * step;
                weigh(z, x, y, blur, distance, still, turning);
            }
        }
        return new RingPosterior(still.range().blurred(common), turning.range());
    }

    private static void weigh(
            double[][] z,
            double x,
            double y,
            double sigma,
            double[] distance,
            Weights still,
            Weights turning) {
        double mean = 0;
        for (int p = 0; p < z.length; p++) {
            double dx = z[p][0] - x;
            double dy = z[p][1] - y;
            distance[p] = Math.sqrt(dx * dx + dy * dy);
            mean += distance[p] / z.length;
        }
        double off = 0;
        for (double d : distance) {
            off += (d - mean) * (d - mean);
        }
        double ratio = 1 / (2 * sigma * sigma);
        if (off * ratio > UNLIKELY) {
            return;
        }
        double centre = Math.hypot(x, y);
        double width = sigma / Math.sqrt(z.length);
        for (int r = 0; r < RADII; r++) {
            double a = mean + width * (r - RADII / 2) / 1.5;
            if (a > 0) {
                double weight = 1 / centre;
                for (double d : distance) {
                    weight *= Math.exp(-(d - a) * (d - a) * ratio) * scaledI0(a * d * 2 * ratio);
                }
                still.add(centre, weight);
                turning.add(a, weight);
            }
        }
    }

    /**
     * I₀(x)·exp(−x): the power series (Abramowitz and Stegun 9.6.12), from 20 on the asymptotic one
     * (9.7.1).
     */
    static double scaledI0(double x) {
        if (x > 20) {
            double e = 1 / (8 * x);
            return (1 + e * (1 + 4.5 * e * (1 + 25 * e / 3))) / Math.sqrt(2 * Math.PI * x);
        }
        double term = Math.exp(-x);
        double sum = term;
        for (int k = 1; term > 1e-12 * sum; k++) {
            term *= x * x / 4 / ((double) k * k);
            sum += term;
        }
        return sum;
    }

    /** A distribution in narrow classes. */
    private static final class Weights {

        private final double[] weights = new double[CLASSES];
        private final double width;

        Weights(double highest) {
            this.width = highest / CLASSES;
        }

        void add(double value, double weight) {
            weights[(int) Math.min(CLASSES - 1, value / width)] += weight;
        }

        Range range() {
            double sum = 0;
            for (double w : weights) {
                sum += w;
            }
            return new Range(quantile(TAIL * sum), quantile(sum / 2), quantile((1 - TAIL) * sum));
        }

        private double quantile(double below) {
            double sum = 0;
            int i = 0;
            while (i < CLASSES - 1 && sum + weights[i] < below) {
                sum += weights[i++];
            }
            return (i + (weights[i] > 0 ? Math.min(1, (below - sum) / weights[i]) : 0.5)) * width;
        }
    }
}
