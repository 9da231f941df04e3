package offtape.core.dsp;

import org.apache.commons.math3.util.FastMath;

/**
 * A linear-phase low-pass filter by the Kaiser window method, of odd length so that its delay is a
 * whole number of samples, normalised to a gain of 1 at 0 Hz.
 *
 * <p>Source: J. F. Kaiser, "Nonrecursive digital filter design using the I0-sinh window function",
 * Proc. IEEE ISCAS, 1974 (design formulas also in Oppenheim and Schafer, Discrete-Time Signal
 * Processing, section 7.5.3).
 *
 * @param taps impulse response, symmetrical, odd length; not to be modified
 * @param passHz edge of the pass band, hertz
 * @param stopHz edge of the stop band, hertz
 * @param sampleRateHz sample rate it is made for
 */
public record LowPass(double[] taps, double passHz, double stopHz, double sampleRateHz) {

    /**
     * Designs a filter.
     *
     * @param passHz edge of the pass band, above 0
     * @param stopHz edge of the stop band, above {@code passHz}, at most half the rate
     * @param attenuationDb attenuation in the stop band, 21 to 180 dB; the design formulas are fits
     *     and meet it within 2 dB. The pass band is flat within twice the same error, since the
     *     error at 0 Hz is normalised away
     * @throws IllegalArgumentException if the edges are out of order
     */
    public static LowPass design(
            double passHz, double stopHz, double attenuationDb, double sampleRateHz) {
        if (!(passHz > 0 && stopHz > passHz && stopHz <= sampleRateHz / 2)) {
            throw new IllegalArgumentException(
                    "edges out of order: " + passHz + ", " + stopHz + " at " + sampleRateHz);
        }
        double width = 2 * Math.PI * (stopHz - passHz) / sampleRateHz;
        int half = (int) Math.ceil((attenuationDb - 7.95) / (2.285 * width) / 2);
        double cutoff = (passHz + stopHz) / sampleRateHz;
        double[] taps = new double[2 * half + 1];
        double beta = KaiserWindow.beta(attenuationDb);
        double sum = 0;
        for (int n = -half; n <= half; n++) {
            double x = Math.PI * cutoff * n;
            double ideal = n == 0 ? cutoff : cutoff * FastMath.sin(x) / x;
            taps[n + half] = ideal * KaiserWindow.value((double) n / (half + 1), beta);
            sum += taps[n + half];
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] /= sum;
        }
        return new LowPass(taps, passHz, stopHz, sampleRateHz);
    }

    /** A filter that changes nothing. */
    static LowPass none(double sampleRateHz) {
        return new LowPass(new double[] {1}, sampleRateHz / 2, sampleRateHz / 2, sampleRateHz);
    }

    /**
     * Filters and keeps one value in so many.
     *
     * @param x samples; the first result lies in the middle of the filter set on its first sample
     * @param step distance of results in samples
     * @param out receives the results from index {@code from}
     * @param count number of results
     */
    public void thin(double[] x, int step, double[] out, int from, int count) {
        int half = half();
        for (int j = 0; j < count; j++) {
            int middle = j * step + half;
            double sum = taps[half] * x[middle];
            double more = 0;
            int i = 1;
            for (; i < half; i += 2) {
                sum += taps[half + i] * (x[middle - i] + x[middle + i]);
                more += taps[half + i + 1] * (x[middle - i - 1] + x[middle + i + 1]);
            }
            if (i == half) {
                sum += taps[2 * half] * (x[middle - half] + x[middle + half]);
            }
            out[from + j] = sum + more;
        }
    }

    /** Samples from the middle of the response to its end. */
    public int half() {
        return taps.length / 2;
    }

    /**
     * Width in hertz of the ideal filter, both sides of 0 Hz together, that passes the same power
     * of white noise.
     */
    public double noiseBandwidthHz() {
        double sum = 0;
        for (double tap : taps) {
            sum += tap * tap;
        }
        return sum * sampleRateHz;
    }

    /** Gain at a frequency in hertz (real, since the response is symmetrical). */
    public double gain(double frequencyHz) {
        double w = 2 * Math.PI * frequencyHz / sampleRateHz;
        double sum = 0;
        for (int i = 0; i < taps.length; i++) {
            sum += taps[i] * Math.cos(w * (i - half()));
        }
        return sum;
    }
}
