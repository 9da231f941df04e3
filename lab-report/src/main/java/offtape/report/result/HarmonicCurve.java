package offtape.report.result;

import java.util.List;

/**
 * A harmonic of a sweep over the frequency of its fundamental.
 *
 * @param order 2 or 3
 * @param points one entry a sixth of an octave, of rising frequency
 */
public record HarmonicCurve(int order, List<Point> points) {

    /** Copies the list so that the curve cannot change. */
    public HarmonicCurve {
        points = List.copyOf(points);
    }

    /**
     * The harmonic at one frequency.
     *
     * @param frequencyHz frequency of the fundamental in the programme
     * @param percent harmonic re fundamental in the return, noise taken out; null where it does not
     *     stand four times above its floor
     * @param uncertaintyPercent expanded uncertainty (k = 2) of that, or null with it
     * @param floorPercent what noise alone would read, rms
     */
    public record Point(
            double frequencyHz, Double percent, Double uncertaintyPercent, double floorPercent) {

        /** Whether the harmonic stands above the noise. */
        public boolean standsOut() {
            return percent != null;
        }
    }
}
