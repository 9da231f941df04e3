package offtape.cli.realign;

import offtape.core.audio.AudioSource;

/**
 * Counts the samples at which a sound was cut off: three or more in a row at one and the same
 * value, the largest of its channel and sign, near full scale.
 */
final class FlatTops {

    /** Near full scale: within 0.2 dB. */
    private static final double NEAR = 0.98;

    /** Two steps of 24 bits. */
    private static final double SAME = 2.0 / (1 << 23);

    private static final int LEAST = 3;
    private static final int BLOCK = 1 << 14;

    private double extreme = NEAR;
    private long count;
    private double last;
    private int run;

    private FlatTops() {}

    /** Number of such samples in each channel. */
    static long[] count(AudioSource sound) {
        FlatTops[] tops = new FlatTops[2 * sound.channels()];
        for (int k = 0; k < tops.length; k++) {
            tops[k] = new FlatTops();
        }
        for (long at = 0; at < sound.frames(); at += BLOCK) {
            double[][] x = sound.read(at, (int) Math.min(BLOCK, sound.frames() - at));
            for (int c = 0; c < x.length; c++) {
                for (double v : x[c]) {
                    tops[2 * c].take(v);
                    tops[2 * c + 1].take(-v);
                }
            }
        }
        long[] counts = new long[sound.channels()];
        for (int k = 0; k < tops.length; k++) {
            tops[k].take(0);
            counts[k / 2] += tops[k].count;
        }
        return counts;
    }

    private void take(double value) {
        if (value < NEAR) {
            end();
            return;
        }
        if (run > 0 && Math.abs(value - last) > SAME) {
            end();
        }
        last = value;
        run++;
    }

    private void end() {
        if (run > 0 && last > extreme + SAME) {
            // what was flat below the largest value was no limit
            extreme = last;
            count = 0;
        }
        if (run >= LEAST && last >= extreme - SAME) {
            count += run;
        }
        run = 0;
    }
}
