package offtape.core.machine;

import offtape.core.dsp.KaiserWindow;

/**
 * Reads a stream between its samples by a Kaiser-windowed sinc. The stream must be empty above half
 * its own half rate (it is oversampled twice); the interpolation error is then below −120 dB. The
 * kernel is tabulated at 1024 places between two samples and taken straight in between, which adds
 * at most (π/2/1024)²/8 = −130 dB.
 */
final class Interpolator {

    /** Samples needed on either side of a place. */
    static final int HALF = 11;

    private static final int TAPS = 2 * HALF;
    private static final int PLACES = 1024;
    private static final double ATTENUATION_DB = 140;
    private static final double[] TABLE = table();

    private Interpolator() {}

    /**
     * The stream at a place.
     *
     * @param samples the stream
     * @param place between {@code HALF − 1} and {@code samples.length − HALF − 1}
     */
    static double at(double[] samples, double place) {
        int left = (int) place;
        double between = (place - left) * PLACES;
        int row = (int) between;
        double mix = between - row;
        int near = row * TAPS;
        int far = near + TAPS;
        int first = left - HALF + 1;
        double here = 0;
        double there = 0;
        for (int i = 0; i < TAPS; i++) {
            double x = samples[first + i];
            here += x * TABLE[near + i];
            there += x * TABLE[far + i];
        }
        return here + mix * (there - here);
    }

    // Each row is scaled to a sum of 1, so that a constant is returned exactly.
    private static double[] table() {
        double beta = KaiserWindow.beta(ATTENUATION_DB);
        double[] table = new double[(PLACES + 1) * TAPS];
        for (int row = 0; row <= PLACES; row++) {
            double sum = 0;
            for (int i = 0; i < TAPS; i++) {
                double x = i - HALF + 1 - (double) row / PLACES;
                double sinc = x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
                table[row * TAPS + i] = sinc * KaiserWindow.value(x / HALF, beta);
                sum += table[row * TAPS + i];
            }
            for (int i = 0; i < TAPS; i++) {
                table[row * TAPS + i] /= sum;
            }
        }
        return table;
    }
}
