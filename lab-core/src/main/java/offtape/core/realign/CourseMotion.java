package offtape.core.realign;

import java.util.List;

/** What happens between two moments: a block of two by two for the walk and for each line. */
final class CourseMotion {

    private final double apart;
    private final double wander;
    private final List<WowLine> lines;
    private final int size;
    private final double[] f;

    /**
     * Between two moments.
     *
     * @param apart frames
     * @param wander variance by which the speed wanders in a frame
     */
    CourseMotion(double apart, double wander, List<WowLine> lines) {
        this.apart = apart;
        this.wander = wander;
        this.lines = lines;
        this.size = 2 + 2 * lines.size();
        this.f = new double[2 * size];
        f[0] = 1;
        f[1] = apart;
        f[3] = 1;
        for (int l = 0; l < lines.size(); l++) {
            WowLine line = lines.get(l);
            double kept = Math.exp(-apart / line.memory());
            double cos = kept * Math.cos(line.omega() * apart);
            double sin = kept * Math.sin(line.omega() * apart);
            f[4 + 4 * l] = cos;
            f[5 + 4 * l] = -sin;
            f[6 + 4 * l] = sin;
            f[7 + 4 * l] = cos;
        }
    }

    /** Moves a state on. */
    void forward(double[] a) {
        for (int b = 0; b < size; b += 2) {
            double x = a[b];
            double y = a[b + 1];
            a[b] = f[2 * b] * x + f[2 * b + 1] * y;
            a[b + 1] = f[2 * b + 2] * x + f[2 * b + 3] * y;
        }
    }

    /** Takes what later moments tell back. */
    void back(double[] r) {
        for (int b = 0; b < size; b += 2) {
            double x = r[b];
            double y = r[b + 1];
            r[b] = f[2 * b] * x + f[2 * b + 2] * y;
            r[b + 1] = f[2 * b + 1] * x + f[2 * b + 3] * y;
        }
    }

    /** Moves a covariance on, with what chance adds. */
    void spread(double[] p) {
        both(p, false);
        p[0] += wander * apart * apart * apart / 3;
        p[1] += wander * apart * apart / 2;
        p[size] += wander * apart * apart / 2;
        p[size + 1] += wander * apart;
        for (int l = 0; l < lines.size(); l++) {
            double lost = -Math.expm1(-2 * apart / lines.get(l).memory());
            int i = 2 + 2 * l;
            p[i * size + i] += lines.get(l).power() * lost;
            p[(i + 1) * size + i + 1] += lines.get(l).power() * lost;
        }
    }

    /** Takes the information of later moments back. */
    void backBoth(double[] m) {
        both(m, true);
    }

    /** F·P·Fᵀ, or Fᵀ·P·F, block by block. */
    private void both(double[] p, boolean isBack) {
        for (int b = 0; b < size; b += 2) {
            for (int c = 0; c < size; c += 2) {
                block(p, b, c, isBack);
            }
        }
    }

    private void block(double[] p, int b, int c, boolean isBack) {
        double a01 = isBack ? f[2 * b + 2] : f[2 * b + 1];
        double a10 = isBack ? f[2 * b + 1] : f[2 * b + 2];
        double c01 = isBack ? f[2 * c + 2] : f[2 * c + 1];
        double c10 = isBack ? f[2 * c + 1] : f[2 * c + 2];
        int at = b * size + c;
        double p00 = p[at];
        double p01 = p[at + 1];
        double p10 = p[at + size];
        double p11 = p[at + size + 1];
        double q00 = f[2 * b] * p00 + a01 * p10;
        double q01 = f[2 * b] * p01 + a01 * p11;
        double q10 = a10 * p00 + f[2 * b + 3] * p10;
        double q11 = a10 * p01 + f[2 * b + 3] * p11;
        p[at] = q00 * f[2 * c] + q01 * c01;
        p[at + 1] = q00 * c10 + q01 * f[2 * c + 3];
        p[at + size] = q10 * f[2 * c] + q11 * c01;
        p[at + size + 1] = q10 * c10 + q11 * f[2 * c + 3];
    }
}
