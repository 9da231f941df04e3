package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;

/** Finds where a function changes its sign. */
final class Crossing {

    private static final int HALVINGS = 60;

    private Crossing() {}

    /**
     * The place between {@code low} and {@code high} where {@code f} changes its sign, or null if
     * it has the same sign at both.
     */
    static Double between(DoubleUnaryOperator f, double low, double high) {
        double a = low;
        double b = high;
        boolean positive = f.applyAsDouble(a) > 0;
        if (positive == f.applyAsDouble(b) > 0) {
            return null;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (a + b) / 2;
            if (f.applyAsDouble(middle) > 0 == positive) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return (a + b) / 2;
    }
}
