package offtape.report.measure.line;

import java.util.ArrayList;
import java.util.List;

/**
 * The bends of a line that are tried, octave by octave: as many as reels can have, so close that a
 * line between two of them loses less than a tenth of its power.
 *
 * @param fromHz lowest frequency that these bends are tried for
 * @param toHz highest
 * @param bends 0 and, if it matters within the stretch, others to both sides, 1/s
 */
record BendGrid(double fromHz, double toHz, double[] bends) {

    /** Twice the largest thickness over the smallest radius of a pack (common practice). */
    static final double MOST_BEND_PER_HZ = 0.004;

    /** Bend times length: the square of the radius may change ninefold. */
    static final double MOST_TURN = 1.6;

    /** Steps of the phase at the ends that bending makes, rad. */
    private static final double STEP_RAD = 4;

    private BendGrid(double fromHz, double toHz, double seconds, double most) {
        this(fromHz, toHz, bends(toHz, seconds, most));
    }

    /** The octaves from one frequency to another for a stretch of some length. */
    static List<BendGrid> octaves(double fromHz, double toHz, double seconds) {
        List<BendGrid> grids = new ArrayList<>();
        for (double high = toHz; high > fromHz; high /= 2) {
            double most = Math.min(MOST_BEND_PER_HZ * high, MOST_TURN / seconds);
            grids.add(new BendGrid(Math.max(fromHz, high / 2), high, seconds, most));
        }
        return grids;
    }

    // bending turns the phase at the ends by 2π·f·b·t²/4 with t half the length
    private static double[] bends(double hz, double seconds, double most) {
        double step = STEP_RAD * 16 / (2 * Math.PI * hz * seconds * seconds);
        int sides = (int) Math.floor(most / step);
        double[] bends = new double[2 * sides + 1];
        for (int i = 0; i < bends.length; i++) {
            bends[i] = (i - sides) * step;
        }
        return bends;
    }

    /** How many peaks of noise are looked at. */
    double peaks(double seconds) {
        return FalseAlarm.PEAKS_PER_BIN * (toHz - fromHz) * seconds * bends.length;
    }
}
