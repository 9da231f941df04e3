package offtape.report.measure.channel;

/**
 * The phase that amplifiers must have if the channels' responses differ as they do: for filters of
 * minimum phase the one follows from the other. Losses of tape and head are no such filters; they
 * turn no phase.
 *
 * <p>Source: H. W. Bode, Network Analysis and Feedback Amplifier Design, 1945, chapter XIV (from
 * memory): θ(f₀) = 1/π ∫ dA/du · ln coth |u/2| du, u = ln(f/f₀), A the logarithm of the gain.
 */
final class ResponsePhase {

    private static final int SMOOTH = 4;

    private ResponsePhase() {}

    /**
     * Phase by gain; beyond the ends the gain is taken to stay as it is.
     *
     * @param hz frequencies, rising
     * @param logGain natural logarithm of the gain at each
     * @return radians at each
     */
    static double[] of(double[] hz, double[] logGain) {
        int n = hz.length;
        double[] gain = smoothed(logGain);
        double[] phase = new double[n];
        for (int j = 0; j < n; j++) {
            double sum = 0;
            for (int i = 0; i + 1 < n; i++) {
                double u = Math.log(Math.sqrt(hz[i] * hz[i + 1]) / hz[j]);
                sum += (gain[i + 1] - gain[i]) * -Math.log(StrictMath.tanh(Math.abs(u) / 2));
            }
            phase[j] = sum / Math.PI;
        }
        return phase;
    }

    private static double[] smoothed(double[] x) {
        double[] out = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            int reach = Math.min(SMOOTH, Math.min(k, x.length - 1 - k));
            for (int i = k - reach; i <= k + reach; i++) {
                out[k] += x[i] / (2 * reach + 1);
            }
        }
        return out;
    }
}
