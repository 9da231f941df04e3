package offtape.core.machine;

import org.apache.commons.math3.complex.Complex;

/**
 * A recursive filter section: H(z) = (b0 + b1/z + b2/z²)/(1 + a1/z + a2/z²).
 *
 * @param rateHz sample rate it runs at
 */
record Section(double rateHz, double b0, double b1, double b2, double a1, double a2) {

    /** The exact complex response at a frequency in hertz. */
    Complex response(double frequencyHz) {
        double omega = 2 * Math.PI * frequencyHz / rateHz;
        Complex z1 = new Complex(Math.cos(omega), -Math.sin(omega));
        Complex z2 = z1.multiply(z1);
        Complex numerator = z1.multiply(b1).add(z2.multiply(b2)).add(b0);
        Complex denominator = z1.multiply(a1).add(z2.multiply(a2)).add(1);
        return numerator.divide(denominator);
    }

    /** A filter in its state at the start of silence. */
    Running start() {
        return new Running(this);
    }

    /** A section at work on a stream. */
    static final class Running {

        // Far below any rounding of the output; smaller states would only slow the processor.
        private static final double NOTHING = 1e-40;

        private final Section section;
        private double s1;
        private double s2;

        private Running(Section section) {
            this.section = section;
        }

        /** Filters the first {@code count} samples in place (transposed direct form II). */
        void run(double[] samples, int count) {
            double u = s1;
            double v = s2;
            for (int i = 0; i < count; i++) {
                double x = samples[i];
                double y = section.b0 * x + u;
                u = section.b1 * x - section.a1 * y + v;
                v = section.b2 * x - section.a2 * y;
                samples[i] = y;
            }
            s1 = Math.abs(u) < NOTHING ? 0 : u;
            s2 = Math.abs(v) < NOTHING ? 0 : v;
        }
    }
}
