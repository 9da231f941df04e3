package offtape.cli.lineup;

import java.util.OptionalDouble;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Finds the strongest steady tone in what returns. */
final class SteadyTone {

    /** How much sound it takes at 48 kHz. */
    static final double SECONDS = 0.7;

    private static final double FROM_HZ = 25;
    private static final double TO_HZ = 20_000;

    /** Bins on each side that the window and flutter spread a tone over. */
    private static final int SPREAD = 4;

    private static final double FLUTTER = 0.005;
    private static final double LEAST_SHARE = 0.7;

    private SteadyTone() {}

    /**
     * Its frequency in hertz, or empty if no tone holds most of the power.
     *
     * @param sound one array a channel
     */
    static OptionalDouble find(double[][] sound, int sampleRateHz) {
        int n = Integer.highestOneBit(sound[0].length);
        double[] power = power(sound, n);
        double binHz = (double) sampleRateHz / n;
        int low = (int) Math.ceil(FROM_HZ / binHz);
        int high = (int) Math.min(power.length - 2, TO_HZ / binHz);
        int peak = low;
        double all = 0;
        for (int k = low; k <= high; k++) {
            all += power[k];
            peak = power[k] > power[peak] ? k : peak;
        }
        int spread = SPREAD + (int) (FLUTTER * peak);
        double near = 0;
        double centre = 0;
        for (int k = Math.max(low, peak - spread); k <= Math.min(high, peak + spread); k++) {
            near += power[k];
            centre += k * power[k];
        }
        boolean steady = near > 0 && near >= LEAST_SHARE * all;
        return steady ? OptionalDouble.of(centre / near * binHz) : OptionalDouble.empty();
    }

    private static double[] power(double[][] sound, int n) {
        double[] power = new double[n / 2 + 1];
        for (double[] x : sound) {
            double[] piece = new double[n];
            for (int i = 0; i < n; i++) {
                double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / n);
                piece[i] = window * x[x.length - n + i];
            }
            Spectrum s = RealFft.ofSize(n).forward(piece);
            for (int k = 0; k < power.length; k++) {
                power[k] += s.power(k);
            }
        }
        return power;
    }
}
