package offtape.report.apply.model;

import java.util.Arrays;

/**
 * A measured curve over frequency, continued beyond its ends with the slope it has there: downwards
 * at most, so that nothing blows up.
 *
 * @param hz frequencies, rising, two at least
 * @param db value at each
 */
record PointCurve(double[] hz, double[] db) {

    private static final double LOW_SPAN_OCTAVES = 1.0 / 3;
    private static final double HIGH_SPAN_OCTAVES = 0.25;
    private static final double STEEPEST_LOW_DB = 24;
    private static final double STEEPEST_HIGH_DB = 48;

    /** The curve at a frequency, dB. */
    double at(double frequencyHz) {
        int last = hz.length - 1;
        if (frequencyHz <= hz[0]) {
            return db[0] - lowSlope() * octaves(frequencyHz, hz[0]);
        }
        if (frequencyHz >= hz[last]) {
            return db[last] + highSlope() * octaves(hz[last], frequencyHz);
        }
        return inside(frequencyHz);
    }

    /** The curve between its points, those at its ends for what lies beyond. */
    private double inside(double frequencyHz) {
        int last = hz.length - 1;
        double at = Math.max(hz[0], frequencyHz);
        if (at >= hz[last]) {
            return db[last];
        }
        int found = Arrays.binarySearch(hz, at);
        int i = found >= 0 ? found : -found - 2;
        double part = octaves(hz[i], at) / octaves(hz[i], hz[i + 1]);
        return db[i] + part * (db[i + 1] - db[i]);
    }

    /** The curve at a frequency, held at its ends. */
    double held(double frequencyHz) {
        return inside(frequencyHz);
    }

    /** dB an octave towards higher frequencies at the low end, 0 or more. */
    private double lowSlope() {
        double further =
                inside(Math.min(hz[0] * Math.pow(2, LOW_SPAN_OCTAVES), hz[hz.length - 1] * 0.99));
        double slope = (further - db[0]) / LOW_SPAN_OCTAVES;
        return Math.max(0, Math.min(STEEPEST_LOW_DB, slope));
    }

    /**
     * The same at the high end, 0 or less. Edges get steeper upwards, so it goes on from the last
     * two spans as it changed between them.
     */
    private double highSlope() {
        int last = hz.length - 1;
        double ratio = Math.pow(2, -HIGH_SPAN_OCTAVES);
        double middle = Math.max(hz[last] * ratio, hz[0] * 1.02);
        double start = Math.max(middle * ratio, hz[0] * 1.01);
        if (middle >= hz[last]) {
            // a curve this narrow tells no slope
            return 0;
        }
        double late = (db[last] - inside(middle)) / octaves(middle, hz[last]);
        double early = (inside(middle) - inside(start)) / octaves(start, middle);
        double slope = Math.min(late, late + late - early);
        return Math.min(0, Math.max(-STEEPEST_HIGH_DB, slope));
    }

    private static double octaves(double fromHz, double toHz) {
        return Math.log(toHz / fromHz) / Math.log(2);
    }
}
