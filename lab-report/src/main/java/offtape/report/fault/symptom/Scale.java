package offtape.report.fault.symptom;

/** Scale on which a symptom spreads about evenly among machines, whatever its size. */
public enum Scale {
    /** As it is: decibels, signs. */
    LINEAR {
        @Override
        double on(double value) {
            return value;
        }

        @Override
        public double back(double scaled) {
            return scaled;
        }

        @Override
        double slope(double value) {
            return 1;
        }
    },
    /** Decades of what is positive. */
    DECADES {
        @Override
        double on(double value) {
            return Math.log10(value);
        }

        @Override
        public double back(double scaled) {
            return Math.pow(10, scaled);
        }

        @Override
        double slope(double value) {
            return 1 / (value * Math.log(10));
        }
    },
    /** Of either sign: straight below 2, then by its logarithm (inverse hyperbolic sine). */
    SIGNED {
        @Override
        double on(double value) {
            return asinh(value / KNEE);
        }

        @Override
        public double back(double scaled) {
            return KNEE * StrictMath.sinh(scaled);
        }

        @Override
        double slope(double value) {
            return 1 / Math.hypot(value, KNEE);
        }
    },
    /** The same with its knee at 20. */
    SIGNED_WIDE {
        @Override
        double on(double value) {
            return asinh(value / WIDE_KNEE);
        }

        @Override
        public double back(double scaled) {
            return WIDE_KNEE * StrictMath.sinh(scaled);
        }

        @Override
        double slope(double value) {
            return 1 / Math.hypot(value, WIDE_KNEE);
        }
    };

    private static final double KNEE = 2;
    private static final double WIDE_KNEE = 20;

    private static double asinh(double x) {
        return Math.signum(x) * Math.log(Math.abs(x) + Math.hypot(x, 1));
    }

    /** The place of a value on the scale. */
    abstract double on(double value);

    /** The value at a place of the scale. */
    public abstract double back(double scaled);

    /** Change of the place with the value. */
    abstract double slope(double value);
}
