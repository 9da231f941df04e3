package offtape.cli.lineup;

/** The last seconds of what was recorded; used by one thread. */
final class History {

    private final double[][] kept;
    private final int capacity;
    private long frames;

    History(int channels, int capacity) {
        this.kept = new double[channels][capacity];
        this.capacity = capacity;
    }

    int channels() {
        return kept.length;
    }

    /** Frames recorded so far. */
    long frames() {
        return frames;
    }

    void append(double[][] block, int count) {
        for (int i = 0; i < count; i++) {
            int at = (int) ((frames + i) % capacity);
            for (int c = 0; c < kept.length; c++) {
                kept[c][at] = block[c][i];
            }
        }
        frames += count;
    }

    /** The last frames, one array a channel; before the first there is silence. */
    double[][] latest(int count) {
        return from(frames - count, count);
    }

    /**
     * A stretch.
     *
     * @param first frame counted from the first that was recorded
     */
    double[][] from(long first, int count) {
        double[][] x = new double[kept.length][count];
        for (int i = 0; i < count; i++) {
            long frame = first + i;
            if (frame >= Math.max(0, frames - capacity) && frame < frames) {
                int at = (int) (frame % capacity);
                for (int c = 0; c < kept.length; c++) {
                    x[c][i] = kept[c][at];
                }
            }
        }
        return x;
    }
}
