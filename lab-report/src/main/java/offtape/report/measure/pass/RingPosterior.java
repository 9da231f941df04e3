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

    /** Centres lie no farther out than this, in lengths of the longest pointer. */
    private static final double EXTENT = 4;

    /** Centres are tried a standard deviation apart, cell by cell of so many a side. */
    private static final int CELL = 8;

    /** Rings less likely than the best by more than exp(−12) do not count. */
    private static final double UNLIKELY = 12;

    /** Radii to either side of the likeliest, one standard deviation apart. */
    private static final int RADII = 3;

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
        Rings rings = new Rings(z, sigma, still, turning);
        double cell = CELL * sigma;
        for (double x = -extent; x < extent; x += cell) {
            for (double y = -extent; y < extent; y += cell) {
                if (rings.mayLieIn(x + cell / 2, y + cell / 2, cell / Math.sqrt(2))) {
                    for (int i = 0; i < CELL * CELL; i++) {
                        rings.weigh(x + (i / CELL + 0.5) * sigma, y + (i % CELL + 0.5) * sigma);
                    }
                }
            }
        }
        return new RingPosterior(still.range().blurred(common), turning.range());
    }

    /** Rings around one centre after another. */
    private static final class Rings {

        private final double[][] z;
        private final double ratio;
        private final double width;
        private final double[] distance;
        private final Weights still;
        private final Weights turning;
        private double mean;

        Rings(double[][] z, double sigma, Weights still, Weights turning) {
            this.z = z;
            this.ratio = 1 / (2 * sigma * sigma);
            this.width = sigma / Math.sqrt(z.length);
            this.distance = new double[z.length];
            this.still = still;
            this.turning = turning;
        }

        /** How unlike the distances from a centre are: the sum of squares about their mean. */
        private double unlike(double x, double y) {
            mean = 0;
            for (int p = 0; p < z.length; p++) {
                double dx = z[p][0] - x;
                double dy = z[p][1] - y;
                distance[p] = Math.sqrt(dx * dx + dy * dy);
                mean += distance[p] / z.length;
            }
            double sum = 0;
            for (double d : distance) {
                sum += (d - mean) * (d - mean);
            }
            return sum;
        }

        /** Whether a centre no farther than {@code reach} could be likely; none moves farther. */
        boolean mayLieIn(double x, double y, double reach) {
            double least = Math.sqrt(unlike(x, y)) - reach * Math.sqrt(z.length);
            return least <= Math.sqrt(UNLIKELY / ratio);
        }

        void weigh(double x, double y) {
            double unlike = unlike(x, y);
            if (unlike * ratio > UNLIKELY) {
                return;
            }
            double centre = Math.sqrt(x * x + y * y);
            for (int r = -RADII; r <= RADII; r++) {
                double off = width * r;
                double a = mean + off;
                if (a > 0) {
                    double weight = Math.exp(-(unlike + z.length * off * off) * ratio) / centre;
                    for (double d : distance) {
                        weight *= scaledI0(2 * a * d * ratio);
                    }
                    still.add(centre, weight);
                    turning.add(a, weight);
                }
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
