package offtape.report.measure;

/**
 * Looks for runs of samples held at the extreme value of the whole recording: a waveform that is
 * cut off. A sine that merely touches its peak has no such runs.
 */
final class ClippingScan {

    private static final double FLAT = 1e-6;
    private static final double LEAST_LEVEL = 0.05;

    private final int runLength;
    private final State[] states;

    /** One channel's progress. */
    private static final class State {
        private double level;
        private double last;
        private int run;
        private int runs;
        private long first;

        void add(double x, long frame, int needed) {
            double size = Math.abs(x);
            if (size > level * (1 + FLAT)) {
                level = size;
                runs = 0;
                run = 1;
            } else if (size >= level * (1 - FLAT) && x * last > 0) {
                run++;
                if (run == needed) {
                    runs++;
                    first = runs == 1 ? frame : first;
                }
            } else {
                run = size >= level * (1 - FLAT) ? 1 : 0;
            }
            last = x;
        }
    }

    ClippingScan(int channels, int runLength) {
        this.runLength = runLength;
        this.states = new State[channels];
        for (int c = 0; c < channels; c++) {
            states[c] = new State();
        }
    }

    /** Takes the next block. */
    void add(double[][] block, long startFrame) {
        for (int c = 0; c < states.length; c++) {
            for (int i = 0; i < block[c].length; i++) {
                states[c].add(block[c][i], startFrame + i, runLength);
            }
        }
    }

    /** Number of clipped places on a channel. */
    int runs(int channel) {
        return states[channel].level < LEAST_LEVEL ? 0 : states[channel].runs;
    }

    /** Frame of the first clipped place. */
    long firstFrame(int channel) {
        return states[channel].first;
    }

    /** The level at which the waveform is cut off, full-scale units. */
    double level(int channel) {
        return states[channel].level;
    }
}
