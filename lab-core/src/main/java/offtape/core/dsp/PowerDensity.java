package offtape.core.dsp;

import java.util.function.DoubleUnaryOperator;

/**
 * One-sided power density of a stretch of sound, by the mean of overlapping Hann-windowed
 * transforms.
 *
 * <p>Source: P. D. Welch, "The use of fast Fourier transform for the estimation of power spectra",
 * IEEE Trans. Audio Electroacoust. 15(2), 1967.
 */
public final class PowerDensity {

    private final double[] density;
    private final double binHz;
    private final int pieces;

    private PowerDensity(double[] density, double binHz, int pieces) {
        this.density = density;
        this.binHz = binHz;
        this.pieces = pieces;
    }

    /**
     * Estimates the density. The mean of each piece is not removed.
     *
     * @param x samples
     * @param sampleRateHz their rate
     * @param longest largest transform; a power of two. A shorter sound takes a smaller one
     * @throws IllegalArgumentException if there are fewer than 16 samples
     */
    public static PowerDensity of(double[] x, double sampleRateHz, int longest) {
        if (x.length < 16) {
            throw new IllegalArgumentException("too short for a spectrum");
        }
        int n = Math.min(longest, Integer.highestOneBit(x.length));
        double[] window = HannWindow.of(n);
        double windowPower = 0;
        for (double w : window) {
            windowPower += w * w;
        }
        RealFft fft = RealFft.ofSize(n);
        double[] sum = new double[n / 2 + 1];
        int pieces = (x.length - n) / (n / 2) + 1;
        for (int p = 0; p < pieces; p++) {
            Spectrum s = fft.forward(HannWindow.applied(window, x, p * (n / 2)));
            add(s, n, windowPower * sampleRateHz * pieces, sum);
        }
        return new PowerDensity(sum, sampleRateHz / n, pieces);
    }

    private static void add(Spectrum s, int n, double unit, double[] sum) {
        for (int k = 0; k < sum.length; k++) {
            double sides = k == 0 || 2 * k == n ? 1 : 2;
            sum[k] += sides * s.power(k) / unit;
        }
    }

    /** Distance of the bins in hertz. */
    public double binHz() {
        return binHz;
    }

    /** How many pieces of the sound each bin is the mean of. */
    public int pieces() {
        return pieces;
    }

    /** Number of bins from 0 Hz to half the rate. */
    public int bins() {
        return density.length;
    }

    /** Density at a bin, squared units per hertz. */
    public double at(int bin) {
        return density[bin];
    }

    /**
     * Power between two frequencies, bins at the borders counted by their share.
     *
     * @param gain power gain as a function of frequency in hertz
     */
    public double power(double fromHz, double toHz, DoubleUnaryOperator gain) {
        double sum = 0;
        int first = (int) Math.max(0, Math.floor(fromHz / binHz - 0.5));
        int last = (int) Math.min(density.length - 1, Math.ceil(toHz / binHz + 0.5));
        for (int k = first; k <= last; k++) {
            double low = Math.max(fromHz, (k - 0.5) * binHz);
            double high = Math.min(toHz, (k + 0.5) * binHz);
            if (high > low) {
                sum += density[k] * (high - low) * gain.applyAsDouble(k * binHz);
            }
        }
        return sum;
    }

    /** Mean density between two frequencies. */
    public double mean(double fromHz, double toHz) {
        double top = Math.min(toHz, (density.length - 0.5) * binHz);
        double low = Math.max(0, Math.min(fromHz, top - binHz));
        return power(low, top, f -> 1) / (top - low);
    }
}
