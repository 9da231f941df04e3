package offtape.report.locate;

import java.util.Arrays;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * How far the lateness of a return wanders over a span of time: the variance of its change, from
 * the spectrum of the speed that a long tone shows. Steady lines make it rise and fall, so that a
 * motion once seen can be continued; random flutter only makes it rise.
 */
final class WowMemory {

    /** Wow and flutter if nothing shows them: 0.3 % rms, evenly from 0.5 to 10 Hz. */
    private static final double ASSUMED_RMS = 0.003;

    private static final double ASSUMED_LOW_HZ = 0.5;
    private static final double ASSUMED_HIGH_HZ = 10;
    private static final double ASSUMED_RATE_HZ = 100;
    private static final double ASSUMED_SECONDS = 80;

    /** The variance is tabulated this much finer than the tone was sampled. */
    private static final int FINER = 16;

    /**
     * Of a longer tone the first ten minutes are looked at: what repeats shows in them, the spans
     * asked for are seconds, and the transform of hours would take gigabytes.
     */
    private static final double LONGEST_S = 600;

    private final double[] variance;
    private final double stepSeconds;

    private WowMemory(double[] variance, double stepSeconds) {
        this.variance = variance;
        this.stepSeconds = stepSeconds;
    }

    /** What a tone shows. */
    static WowMemory of(TonePhase.Course course) {
        int longest = (int) Math.round(LONGEST_S / course.stepSeconds()) + 1;
        double[] heard = course.lateSeconds();
        double[] late =
                Parabola.removed(heard.length > longest ? Arrays.copyOf(heard, longest) : heard);
        int n = RealFft.nextPowerOfTwo(2 * late.length);
        double[] speed = new double[late.length - 1];
        double windowPower = 0;
        for (int k = 0; k < speed.length; k++) {
            double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * (k + 0.5) / speed.length);
            speed[k] = window * (late[k + 1] - late[k]) / course.stepSeconds();
            windowPower += window * window;
        }
        Spectrum spectrum = RealFft.ofSize(n).forward(speed);
        double[] power = new double[spectrum.bins()];
        for (int k = 1; k < power.length; k++) {
            power[k] = spectrum.power(k) / (windowPower * n);
        }
        return of(power, course.stepSeconds(), n);
    }

    /** What is assumed of a machine of which no tone is heard. */
    static WowMemory assumed() {
        int n = RealFft.nextPowerOfTwo((int) (ASSUMED_SECONDS * ASSUMED_RATE_HZ));
        double binHz = ASSUMED_RATE_HZ / n;
        double[] power = new double[n / 2 + 1];
        double each = ASSUMED_RMS * ASSUMED_RMS * binHz / (ASSUMED_HIGH_HZ - ASSUMED_LOW_HZ) / 2;
        for (int k = 1; k < power.length; k++) {
            boolean inside = k * binHz >= ASSUMED_LOW_HZ && k * binHz <= ASSUMED_HIGH_HZ;
            power[k] = inside ? each : 0;
        }
        return of(power, 1 / ASSUMED_RATE_HZ, n);
    }

    /**
     * The table from powers of speed.
     *
     * @param power mean square in each bin, of the two sides one
     */
    private static WowMemory of(double[] power, double stepSeconds, int n) {
        int size = FINER * n;
        double[] re = new double[size / 2 + 1];
        for (int k = 1; k < power.length; k++) {
            double omega = 2 * Math.PI * k / (n * stepSeconds);
            re[k] = size * power[k] / (omega * omega);
        }
        double[] covariance =
                RealFft.ofSize(size).inverse(Spectrum.of(size, re, new double[re.length]));
        double[] variance = new double[size / 2];
        for (int i = 0; i < variance.length; i++) {
            variance[i] = 2 * (covariance[0] - covariance[i]);
        }
        return new WowMemory(variance, stepSeconds / FINER);
    }

    /** Mean square of the change of lateness over a span of programme time, s². */
    double variance(double seconds) {
        double place = Math.abs(seconds) / stepSeconds;
        int i = (int) Math.min(variance.length - 2, place);
        double part = Math.min(1, place - i);
        return (1 - part) * variance[i] + part * variance[i + 1];
    }
}
