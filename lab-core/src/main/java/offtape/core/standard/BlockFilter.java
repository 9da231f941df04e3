package offtape.core.standard;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A long finite impulse response applied block by block through the frequency domain (overlap-add),
 * so that memory does not grow with the signal. Immutable.
 */
final class BlockFilter {

    private final RealFft fft;
    private final Spectrum response;
    private final int taps;

    BlockFilter(double[] impulseResponse) {
        taps = impulseResponse.length;
        fft = RealFft.ofSize(RealFft.nextPowerOfTwo(4 * taps));
        response = fft.forward(impulseResponse);
    }

    /** The causal output, as long as the input; the signal is silent before its first sample. */
    double[] apply(double[] x) {
        return convolved(x, 0);
    }

    /** The output moved ahead by half the length: for responses that are symmetric about theirs. */
    double[] applyCentred(double[] x) {
        return convolved(x, taps / 2);
    }

    private double[] convolved(double[] x, int ahead) {
        double[] y = new double[x.length];
        int block = fft.size() - taps + 1;
        for (int from = 0; from < x.length; from += block) {
            int length = Math.min(block, x.length - from);
            double[] part = fft.inverse(fft.forward(x, from, length).times(response));
            add(part, length + taps - 1, y, from - ahead);
        }
        return y;
    }

    private static void add(double[] part, int length, double[] y, int at) {
        int end = Math.min(length, y.length - at);
        for (int j = Math.max(0, -at); j < end; j++) {
            y[at + j] += part[j];
        }
    }
}
