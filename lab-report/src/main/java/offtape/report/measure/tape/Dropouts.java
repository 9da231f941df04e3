package offtape.report.measure.tape;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Where the level of a steady tone jumps: dropouts and clicks. */
final class Dropouts {

    /** Jumps are this many standard deviations of the undisturbed level. */
    private static final double MANY = 5;

    /** And no smaller than this share of the level (0.7 dB). */
    private static final double LEAST = 0.084;

    /** Distance of the quartiles of normally distributed values, in standard deviations. */
    private static final double QUARTILES = 1.349;

    private Dropouts() {}

    /**
     * Marks the jumps.
     *
     * @param level amplitudes, 1 or more
     * @param spread values to either side that a jump spoils
     */
    static boolean[] in(double[] level, int spread) {
        double usual = Ranked.median(level);
        double most = Math.max(LEAST * usual, MANY / QUARTILES * Ranked.middleHalf(level));
        boolean[] marked = new boolean[level.length];
        for (int i = 0; i < level.length; i++) {
            if (Math.abs(level[i] - usual) > most) {
                int from = Math.max(0, i - spread);
                Arrays.fill(marked, from, Math.min(level.length, i + spread + 1), true);
            }
        }
        return marked;
    }

    /**
     * What the level does about its median, 0 in the jumps, and as strong altogether as if there
     * were none.
     */
    static double[] bridged(double[] level, int spread) {
        if (level.length == 0) {
            return level;
        }
        boolean[] marked = in(level, spread);
        int[] good = IntStream.range(0, level.length).filter(i -> !marked[i]).toArray();
        double mean = IntStream.of(good).mapToDouble(i -> level[i]).average().orElse(0);
        double more = Math.sqrt((double) level.length / Math.max(1, good.length));
        double[] about = new double[level.length];
        Arrays.setAll(about, i -> marked[i] ? 0 : more * (level[i] - mean));
        return about;
    }
}
