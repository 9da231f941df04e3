package offtape.cli.lineup;

import java.util.Arrays;
import offtape.core.dsp.Baseband;

/** Where a tone is whole: not in a dropout, and not in a gap of a computer that was late. */
final class WholeStretches {

    private static final double STRONG = 0.8;
    private static final double GAP = 0.5;

    /** Values beside a gap that its edge bends. */
    private static final int EDGE = 3;

    private WholeStretches() {}

    /** Whether each value is good. */
    static boolean[] of(Baseband tone) {
        double[] powers = new double[tone.size()];
        for (int k = 0; k < powers.length; k++) {
            powers[k] = tone.power(k);
        }
        double[] sorted = powers.clone();
        Arrays.sort(sorted);
        double least = sorted.length == 0 ? 0 : GAP * sorted[(int) (STRONG * sorted.length)];
        boolean[] whole = new boolean[powers.length];
        for (int k = 0; k < whole.length; k++) {
            whole[k] = least > 0;
            int to = Math.min(whole.length - 1, k + EDGE);
            for (int i = Math.max(0, k - EDGE); i <= to; i++) {
                whole[k] &= powers[i] > least;
            }
        }
        return whole;
    }
}
