package offtape.core.model;

/**
 * A curve as a table, since it is asked for at millions of places a second: straight between points
 * a 512th of the reference's peak apart, within 10⁻⁶ of a curve that bends no harder than 1/1
 * there.
 */
final class CurveTable {

    private static final double FARTHEST = 16;
    private static final int POINTS_A_UNIT = 512;
    private static final int MIDDLE = (int) (FARTHEST * POINTS_A_UNIT);

    private final TapeCurve curve;
    private final double[] table = new double[2 * MIDDLE + 2];

    CurveTable(TapeCurve curve) {
        this.curve = curve;
        for (int i = 0; i < table.length; i++) {
            table[i] = curve.of((double) (i - MIDDLE) / POINTS_A_UNIT);
        }
    }

    boolean isStraight() {
        return curve.isStraight();
    }

    double of(double x) {
        if (!(Math.abs(x) < FARTHEST)) {
            return curve.of(x);
        }
        double place = x * POINTS_A_UNIT + MIDDLE;
        int i = (int) place;
        return table[i] + (place - i) * (table[i + 1] - table[i]);
    }
}
