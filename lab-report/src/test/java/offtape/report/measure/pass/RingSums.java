package offtape.report.measure.pass;

import java.util.stream.IntStream;

/**
 * How likely lengths of the tape's pointer and of the replay's are, summed over all rings: every
 * length and angle of the centre and every radius counts alike.
 */
final class RingSums {

    private static final double STEP = 0.02;
    private static final double MOST = 3;
    private static final int ANGLES = 120;
    private static final double HIGHEST_X = 300;
    private static final double X_STEP = 0.1;
    private static final double[] BESSEL =
            IntStream.range(0, (int) (HIGHEST_X / X_STEP) + 2)
                    .mapToDouble(i -> overAllAngles(i * X_STEP))
                    .toArray();

    private final double[] still = new double[(int) (MOST / STEP)];
    private final double[] turning = new double[still.length];

    RingSums(double[][] z, double sigma) {
        double[] d = new double[z.length];
        for (int c = 0; c < still.length; c++) {
            for (int k = 0; k < ANGLES; k++) {
                double length = (c + 0.5) * STEP;
                double angle = 2 * Math.PI * k / ANGLES;
                for (int p = 0; p < d.length; p++) {
                    d[p] =
                            Math.hypot(
                                    z[p][0] - length * Math.cos(angle),
                                    z[p][1] - length * Math.sin(angle));
                }
                for (int a = 0; a < turning.length; a++) {
                    double w = likelihood(d, (a + 0.5) * STEP, sigma);
                    still[c] += w;
                    turning[a] += w;
                }
            }
        }
    }

    /** Of distances from the centre, given the radius: Rice's density. */
    private double likelihood(double[] d, double radius, double sigma) {
        double product = 1;
        for (double one : d) {
            double off = (one - radius) / sigma;
            if (Math.abs(off) > 7) {
                return 0;
            }
            double x = Math.min(HIGHEST_X, one * radius / (sigma * sigma)) / X_STEP;
            int i = (int) x;
            product *=
                    Math.exp(-off * off / 2) * (BESSEL[i] + (x - i) * (BESSEL[i + 1] - BESSEL[i]));
        }
        return product;
    }

    /** Mean of exp(x·(cos θ − 1)) over a turn. */
    private static double overAllAngles(double x) {
        int n = 200;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += Math.exp(x * (Math.cos(2 * Math.PI * i / n) - 1)) / n;
        }
        return sum;
    }

    double still(double share) {
        return quantile(still, share);
    }

    double turning(double share) {
        return quantile(turning, share);
    }

    private static double quantile(double[] weights, double share) {
        double all = 0;
        for (double w : weights) {
            all += w;
        }
        double sum = 0;
        int i = 0;
        while (sum + weights[i] < share * all) {
            sum += weights[i++];
        }
        return (i + (share * all - sum) / weights[i]) * STEP;
    }
}
