package offtape.core.standard;

import java.util.Arrays;

/** Samples that wait, first in, first out. */
final class SampleQueue {

    private double[] held = new double[0];
    private int first;
    private int size;

    int size() {
        return size;
    }

    /** Puts samples at the end. */
    void add(double[] x) {
        if (first + size + x.length > held.length) {
            int room = Math.max(held.length, 2 * (size + x.length));
            double[] moved = new double[room];
            System.arraycopy(held, first, moved, 0, size);
            held = moved;
            first = 0;
        }
        System.arraycopy(x, 0, held, first + size, x.length);
        size += x.length;
    }

    /**
     * Takes samples from the front.
     *
     * @param count how many, at most as many as there are
     */
    double[] take(int count) {
        double[] taken = Arrays.copyOfRange(held, first, first + count);
        first += count;
        size -= count;
        return taken;
    }
}
