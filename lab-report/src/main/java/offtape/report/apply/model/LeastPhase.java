package offtape.report.apply.model;

/**
 * The least phase that goes with a magnitude on {@link LogGrid}, and the part of it that the slopes
 * of a band give. H. W. Bode, "Network Analysis and Feedback Amplifier Design", 1945: θ(u) = (1/π)
 * ∫ a′(v) ln coth(|v − u|/2) dv, u = ln ω.
 */
final class LeastPhase {

    private static final double NEPERS_A_DB = Math.log(10) / 20;
    private static final double STEP = Math.log(2) / LogGrid.POINTS_AN_OCTAVE;
    private static final double[] WEIGHTS = weights();

    private LeastPhase() {}

    /** Weight of a cell whose middle lies i + 1/2 steps away, over π. */
    private static double[] weights() {
        double[] w = new double[LogGrid.SIZE];
        w[0] = (Math.log(2 / STEP) + 1) / Math.PI;
        for (int i = 1; i < w.length; i++) {
            w[i] = -Math.log(StrictMath.tanh((i + 0.5) * STEP / 2)) / Math.PI;
        }
        return w;
    }

    /**
     * Phase from the slopes between two frequencies alone, radians, on the grid.
     *
     * @param db magnitude on the grid
     */
    static double[] of(double[] db, double fromHz, double toHz) {
        double[] phase = new double[LogGrid.SIZE];
        for (int j = 0; j + 1 < LogGrid.SIZE; j++) {
            double middle = Math.sqrt(LogGrid.hz(j) * LogGrid.hz(j + 1));
            double rise = NEPERS_A_DB * (db[j + 1] - db[j]);
            if (middle >= fromHz && middle < toHz && rise != 0) {
                for (int i = 0; i < phase.length; i++) {
                    phase[i] += rise * WEIGHTS[i <= j ? j - i : i - j - 1];
                }
            }
        }
        return phase;
    }
}
