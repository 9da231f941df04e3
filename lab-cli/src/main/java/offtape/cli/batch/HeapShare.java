package offtape.cli.batch;

import java.util.concurrent.Semaphore;

/**
 * Lets as many returns be measured at once as the heap bears, however many there are: a return
 * takes 48 MiB and three times the size of its file or of its programme's sound, whichever is
 * larger (a programme of three minutes at 48 kHz: 210 MiB, of which it needs some 90), and all
 * together three quarters of the largest heap. One that would take more than that is measured
 * alone.
 */
final class HeapShare {

    private static final long MEBIBYTE = 1 << 20;
    private static final long BASE_MIB = 48;
    private static final long MIB_PER_MIB = 3;

    private final int all;
    private final Semaphore free;

    /**
     * A heap to be shared.
     *
     * @param heapBytes the largest that it may grow
     */
    HeapShare(long heapBytes) {
        this.all = (int) Math.max(1, Math.min(1 << 20, heapBytes / MEBIBYTE * 3 / 4));
        this.free = new Semaphore(all, true);
    }

    /**
     * Waits until the part is free that a return needs, and takes it.
     *
     * @param fileBytes size of its file or of its programme's sound
     * @return the part, to be given back
     */
    int take(long fileBytes) {
        int share = part(fileBytes);
        free.acquireUninterruptibly(share);
        return share;
    }

    /** What a return takes, MiB, at most the whole. */
    int part(long fileBytes) {
        return (int) Math.min(all, BASE_MIB + MIB_PER_MIB * (fileBytes / MEBIBYTE));
    }

    /** Gives a part back. */
    void giveBack(int share) {
        free.release(share);
    }
}
