package offtape.core.standard;

/**
 * The weighting K of Rec. ITU-R BS.1770 (section 1 of its Annex 1): a shelf for the head and a high
 * pass, one after the other. For one signal and one thread.
 *
 * <p>The Recommendation prints coefficients for 48 kHz only and asks for the same response at other
 * rates. Each section is taken back to its analogue form by the bilinear transform and brought to
 * the other rate so that its natural frequency stays where it is. At 48 kHz the coefficients are
 * those printed.
 */
final class KWeighting {

    private static final double PUBLISHED_RATE_HZ = 48_000;

    /** Tables 1 and 2: b0, b1, b2, a1, a2. */
    private static final double[][] PUBLISHED = {
        {
            1.53512485958697,
            -2.69169618940638,
            1.19839281085285,
            -1.69065929318241,
            0.73248077421585
        },
        {1, -2, 1, -1.99004745483398, 0.99007225036621}
    };

    private final Section shelf;
    private final Section highPass;

    KWeighting(double sampleRateHz) {
        shelf = new Section(coefficients(0, sampleRateHz));
        highPass = new Section(coefficients(1, sampleRateHz));
    }

    /** The next sample, weighted. */
    double next(double x) {
        return highPass.next(shelf.next(x));
    }

    /**
     * Coefficients of a section.
     *
     * @param section 0 for the shelf, 1 for the high pass
     * @param sampleRateHz frames a second
     * @return b0, b1, b2, a1, a2 where a0 is 1
     */
    static double[] coefficients(int section, double sampleRateHz) {
        double[] at48 = PUBLISHED[section];
        if (sampleRateHz == PUBLISHED_RATE_HZ) {
            return at48.clone();
        }
        double[] upper = analogue(at48[0], at48[1], at48[2]);
        double[] lower = analogue(1, at48[3], at48[4]);
        // the natural frequency, in the variable (z − 1)/(z + 1) of 48 kHz
        double natural = Math.sqrt(lower[0] / lower[2]);
        double naturalHz = Math.atan(natural) * PUBLISHED_RATE_HZ / Math.PI;
        double stretch = natural / Math.tan(Math.PI * naturalHz / sampleRateHz);
        double[] b = digital(upper, stretch);
        double[] a = digital(lower, stretch);
        return new double[] {b[0] / a[0], b[1] / a[0], b[2] / a[0], a[1] / a[0], a[2] / a[0]};
    }

    // c0 + c1/z + c2/z² as a polynomial in s = (z − 1)/(z + 1), times 4/(1 + 1/z)²
    private static double[] analogue(double c0, double c1, double c2) {
        return new double[] {c0 + c1 + c2, 2 * (c0 - c2), c0 - c1 + c2};
    }

    // the way back, with s taken "stretch" times
    private static double[] digital(double[] p, double stretch) {
        double p1 = p[1] * stretch;
        double p2 = p[2] * stretch * stretch;
        return new double[] {p[0] + p1 + p2, 2 * (p[0] - p2), p[0] - p1 + p2};
    }

    /** One section of second order, transposed direct form. */
    private static final class Section {

        private final double[] c;
        private double first;
        private double second;

        Section(double[] coefficients) {
            this.c = coefficients;
        }

        double next(double x) {
            double y = c[0] * x + first;
            first = c[1] * x - c[3] * y + second;
            second = c[2] * x - c[4] * y;
            return y;
        }
    }
}
