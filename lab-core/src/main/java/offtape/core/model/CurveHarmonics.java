package offtape.core.model;

import java.util.function.DoubleUnaryOperator;

/** What a curve without memory makes of a cosine, by the trapezium rule over half a turn. */
public final class CurveHarmonics {

    private static final int POINTS = 96;
    private static final int ORDERS = 4;
    private static final double[][] COSINES = cosines();

    private CurveHarmonics() {}

    private static double[][] cosines() {
        double[][] table = new double[ORDERS][POINTS];
        for (int n = 0; n < ORDERS; n++) {
            for (int i = 0; i < POINTS; i++) {
                table[n][i] = Math.cos(n * Math.PI * (i + 0.5) / POINTS);
            }
        }
        return table;
    }

    /**
     * Cosine amplitudes of orders 0 to 3.
     *
     * @param curve the curve
     * @param peak peak of the cosine
     */
    public static double[] of(DoubleUnaryOperator curve, double peak) {
        double[] sums = new double[ORDERS];
        for (int i = 0; i < POINTS; i++) {
            double y = curve.applyAsDouble(peak * COSINES[1][i]);
            for (int n = 0; n < ORDERS; n++) {
                sums[n] += y * COSINES[n][i];
            }
        }
        for (int n = 0; n < ORDERS; n++) {
            sums[n] *= (n == 0 ? 1.0 : 2.0) / POINTS;
        }
        return sums;
    }
}
