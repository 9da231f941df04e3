package offtape.cli.lineup;

/**
 * What a steady tone is on one channel.
 *
 * @param levelDbfs its level, dB re a full-scale sine; −200 at the least
 * @param share of the power around it that keeps step with it, 0 to 1: little in noise
 * @param k3Percent third harmonic over fundamental, or null if it lies beyond the sample rate or is
 *     hidden
 * @param k3BelowPercent what it lies below if noise hides it, else null
 */
public record ToneReading(double levelDbfs, double share, Double k3Percent, Double k3BelowPercent) {

    private static final double STEADY = 0.5;

    /** Whether it is a tone and not noise. */
    boolean isTone() {
        return share > STEADY;
    }
}
