package offtape.cli.sound;

/**
 * Frames on their way from one thread to another, without locks and without allocating: exactly one
 * thread puts and one takes.
 */
public final class FrameRing {

    private final double[][] frames;
    private final int capacity;
    private volatile long put;
    private volatile long taken;
    private volatile boolean ended;

    /**
     * An empty ring.
     *
     * @param capacity frames it holds, at least 1
     */
    public FrameRing(int channels, int capacity) {
        this.frames = new double[channels][capacity];
        this.capacity = capacity;
    }

    /** Frames that wait to be taken. */
    public int waiting() {
        return (int) (put - taken);
    }

    /** Frames for which there is room. */
    public int room() {
        return capacity - waiting();
    }

    /**
     * Puts as many frames as there is room for.
     *
     * @param block one array a channel
     * @param from place of the first frame in them
     * @return how many were put, {@code count} or fewer
     */
    public int put(double[][] block, int from, int count) {
        int some = Math.min(count, room());
        int at = (int) (put % capacity);
        int first = Math.min(some, capacity - at);
        for (int c = 0; c < frames.length; c++) {
            System.arraycopy(block[c], from, frames[c], at, first);
            System.arraycopy(block[c], from + first, frames[c], 0, some - first);
        }
        put += some;
        return some;
    }

    /**
     * Takes as many frames as there are.
     *
     * @param block one array a channel, which receives them
     * @param from place of the first frame in them
     * @return how many were taken, {@code count} or fewer
     */
    public int take(double[][] block, int from, int count) {
        int some = Math.min(count, waiting());
        int at = (int) (taken % capacity);
        int first = Math.min(some, capacity - at);
        for (int c = 0; c < frames.length; c++) {
            System.arraycopy(frames[c], at, block[c], from, first);
            System.arraycopy(frames[c], 0, block[c], from + first, some - first);
        }
        taken += some;
        return some;
    }

    /** Nothing more will be put. */
    public void end() {
        ended = true;
    }

    /** Whether all was put and taken. */
    public boolean isDone() {
        return ended && waiting() == 0;
    }

    /** Whether nothing more will be put. */
    public boolean isEnded() {
        return ended;
    }
}
