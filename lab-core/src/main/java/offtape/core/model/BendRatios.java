package offtape.core.model;

/**
 * Fundamental and third harmonic of a bend of limit 1 over the peak of a cosine: a bend of another
 * limit is the same curve on another scale. Straight between points a tenth of a decibel apart.
 */
final class BendRatios {

    private static final double LOWEST_DB = -60;
    private static final double STEP_DB = 0.1;
    private static final int POINTS = 1201;
    private static final BendRatios TANH = new BendRatios(new Bend(Bend.Shape.TANH, 1));
    private static final BendRatios CUBIC = new BendRatios(new Bend(Bend.Shape.CUBIC, 1));

    private final double[] first = new double[POINTS];
    private final double[] third = new double[POINTS];

    private BendRatios(Bend bend) {
        for (int i = 0; i < POINTS; i++) {
            double peak = Math.pow(10, (LOWEST_DB + i * STEP_DB) / 20);
            double[] h = CurveHarmonics.of(bend::of, peak);
            first[i] = h[1] / peak;
            third[i] = h[3] / peak;
        }
    }

    static BendRatios of(Bend.Shape shape) {
        return shape == Bend.Shape.TANH ? TANH : CUBIC;
    }

    double[] at(double peak) {
        double place = peak <= 0 ? -1 : (20 * Math.log10(peak) - LOWEST_DB) / STEP_DB;
        if (place < 0) {
            return new double[] {1, 0};
        }
        int i = Math.min(POINTS - 2, (int) place);
        double part = Math.min(1, place - i);
        return new double[] {
            first[i] + part * (first[i + 1] - first[i]), third[i] + part * (third[i + 1] - third[i])
        };
    }
}
