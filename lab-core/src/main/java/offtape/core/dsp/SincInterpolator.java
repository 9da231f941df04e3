package offtape.core.dsp;

/**
 * Values between samples by a Kaiser-windowed sinc, for signals without content near half the
 * sample rate. The error stays under −100 dB for sines up to 0.45 of the sample rate. The kernel is
 * tabulated at 1024 places between two samples and taken straight in between, which adds at most
 * (π/1024)²/8 = −118 dB.
 */
public final class SincInterpolator {

    private static final int HALF = 36;
    private static final int TAPS = 2 * HALF;
    private static final int PLACES = 1024;
    private static final double ATTENUATION_DB = 110;
    private static final double[] TABLE = table();

    private SincInterpolator() {}

    /** One row of taps a place, so that reading runs through memory in order. */
    private static double[] table() {
        double beta = KaiserWindow.beta(ATTENUATION_DB);
        double[] table = new double[(PLACES + 1) * TAPS];
        for (int row = 0; row <= PLACES; row++) {
            for (int i = 0; i < TAPS; i++) {
                double x = i - HALF + 1 - (double) row / PLACES;
                double sinc = x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
                table[row * TAPS + i] = sinc * KaiserWindow.value(x / HALF, beta);
            }
        }
        return table;
    }

    /**
     * The value at a place between samples; samples outside the array count as zero.
     *
     * @param samples the signal
     * @param place index, fractional
     */
    public static double at(double[] samples, double place) {
        int left = (int) Math.floor(place);
        double between = (place - left) * PLACES;
        int row = (int) between;
        double mix = between - row;
        int first = left - HALF + 1;
        int from = Math.max(0, -first);
        int to = Math.min(TAPS, samples.length - first);
        int near = row * TAPS;
        if (from > 0 || to < TAPS) {
            return atEdge(samples, first, from, to, near, mix);
        }
        // Four sums side by side: a single one would wait for each addition to end.
        double here = 0;
        double there = 0;
        double hereToo = 0;
        double thereToo = 0;
        for (int i = 0; i < TAPS; i += 2) {
            double x = samples[first + i];
            double next = samples[first + i + 1];
            here += x * TABLE[near + i];
            there += x * TABLE[near + TAPS + i];
            hereToo += next * TABLE[near + i + 1];
            thereToo += next * TABLE[near + TAPS + i + 1];
        }
        double sum = here + hereToo;
        return sum + mix * (there + thereToo - sum);
    }

    /** The values at several places. */
    public static double[] at(double[] samples, double[] places) {
        double[] out = new double[places.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = at(samples, places[k]);
        }
        return out;
    }

    private static double atEdge(
            double[] samples, int first, int from, int to, int near, double mix) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            double tap = TABLE[near + i] + mix * (TABLE[near + TAPS + i] - TABLE[near + i]);
            sum += samples[first + i] * tap;
        }
        return sum;
    }
}
