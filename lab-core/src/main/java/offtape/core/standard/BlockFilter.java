package offtape.core.standard;

import java.util.Arrays;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A long finite impulse response applied block by block through the frequency domain (overlap-add),
 * so that memory does not grow with the signal. Immutable; each signal takes its own run.
 */
final class BlockFilter {

    private final RealFft fft;
    private final Spectrum response;
    private final int taps;

    BlockFilter(double[] impulseResponse) {
        taps = impulseResponse.length;
        fft = RealFft.ofSize(RealFft.nextPowerOfTwo(2 * taps));
        response = fft.forward(impulseResponse);
    }

    /** The causal output for a signal that is at hand as a whole, as long as the input. */
    double[] apply(double[] x) {
        double[] results = new double[x.length];
        RunningFilter run = start();
        int ready = 0;
        for (int from = 0; from < x.length; from += fft.size()) {
            int to = Math.min(x.length, from + fft.size());
            ready = put(run.next(Arrays.copyOfRange(x, from, to)), results, ready);
        }
        put(run.rest(), results, ready);
        return results;
    }

    private static int put(double[] some, double[] into, int at) {
        System.arraycopy(some, 0, into, at, some.length);
        return at + some.length;
    }

    /** Causal results; the signal is silent before its first sample and after its last. */
    RunningFilter start() {
        return new Run(0);
    }

    /** Results moved ahead by half the length: for responses that are symmetric about theirs. */
    RunningFilter startCentred() {
        return new Run(taps / 2);
    }

    private final class Run implements RunningFilter {

        private final int block = fft.size() - taps + 1;
        private final SampleQueue waiting = new SampleQueue();
        private final SampleQueue ready = new SampleQueue();
        private double[] overlap = new double[taps - 1];

        /** Results at the start that belong to times before the signal. */
        private int early;

        private long owed;

        Run(int ahead) {
            early = ahead;
        }

        @Override
        public double[] next(double[] x) {
            owed += x.length;
            waiting.add(x);
            while (waiting.size() >= block) {
                pass(waiting.take(block), block);
            }
            return ready();
        }

        @Override
        public double[] rest() {
            double[] last = waiting.take(waiting.size());
            pass(last, last.length + taps - 1);
            return ready();
        }

        /** Filters one piece, and makes the first {@code count} of its results ready. */
        private void pass(double[] piece, int count) {
            double[] y = fft.inverse(fft.forward(piece).times(response));
            for (int i = 0; i < overlap.length; i++) {
                y[i] += overlap[i];
            }
            ready.add(Arrays.copyOf(y, count));
            double[] after = new double[taps - 1];
            int left = Math.min(after.length, y.length - piece.length);
            System.arraycopy(y, piece.length, after, 0, left);
            overlap = after;
        }

        private double[] ready() {
            int skipped = Math.min(early, ready.size());
            ready.take(skipped);
            early -= skipped;
            double[] results = ready.take((int) Math.min(owed, ready.size()));
            owed -= results.length;
            return results;
        }
    }
}
