package offtape.core.machine;

/**
 * A curve applied to a stream at a multiple of its rate, window by window, so that its harmonics do
 * not fold back. The n-th harmonic of tanh at a drive D falls as exp(−n·arsinh(π/2D)); the multiple
 * is chosen by each window's peak so that for tones to 10 kHz, of a programme at 44.1 kHz or more,
 * the first harmonic that would fold into the band lies 100 dB down: D of the 3 % peak is 0.63, so
 * twice the rate serves to half that peak, four times to three times the peak, eight times to eight
 * times.
 */
final class OversampledCurve {

    private static final int[] FACTORS = {2, 4, 8};
    private static final double[] PEAKS = {0.5, 3};
    private static final double PASS = 0.46;
    private static final double STOP = 0.5;

    private final RecordingCurve curve;
    private final BlockGeometry blocks;
    private final RateChange[] changes = new RateChange[FACTORS.length];
    private final double threePercentPeak;
    private final double[] window;

    OversampledCurve(RecordingCurve curve, BlockGeometry blocks, double rateHz) {
        this.curve = curve;
        this.threePercentPeak = curve.threePercentPeak();
        this.blocks = blocks;
        this.window = new double[blocks.transform()];
        for (int i = 0; i < FACTORS.length; i++) {
            Kernel kernel = kernel(FACTORS[i], rateHz);
            changes[i] = new RateChange(blocks.transform(), FACTORS[i], kernel);
        }
    }

    /** The low-pass before and after the curve at a multiple of a rate. */
    static Kernel kernel(int factor, double rateHz) {
        return Kernel.lowPass(factor * rateHz, PASS * rateHz, STOP * rateHz);
    }

    /** Takes a chunk and returns one, a reach behind it. */
    double[] next(double[] chunk) {
        blocks.shift(window, chunk);
        double peak = 0;
        for (double x : window) {
            peak = Math.max(peak, Math.abs(x));
        }
        if (peak == 0) {
            return new double[chunk.length];
        }
        RateChange change = changes[index(peak / threePercentPeak)];
        double[] wide = change.up(window);
        curve.apply(wide);
        return blocks.middle(change.down(wide), 1);
    }

    private static int index(double relativePeak) {
        int index = 0;
        while (index < PEAKS.length && relativePeak > PEAKS[index]) {
            index++;
        }
        return index;
    }
}
