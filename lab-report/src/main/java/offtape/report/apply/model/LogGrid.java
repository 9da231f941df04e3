package offtape.report.apply.model;

import java.util.function.DoubleUnaryOperator;

/**
 * Frequencies evenly spaced along their logarithm, on which curves of a model are held: a
 * forty-eighth of an octave from 0.5 Hz to some 260 kHz, far beyond what is heard, since the phase
 * of a filter depends on its slopes there.
 */
final class LogGrid {

    static final int POINTS_AN_OCTAVE = 48;
    static final int SIZE = 19 * POINTS_AN_OCTAVE + 1;

    private static final double LOWEST_HZ = 0.5;

    private LogGrid() {}

    /** Frequency of a point, hertz. */
    static double hz(int i) {
        return LOWEST_HZ * Math.pow(2, (double) i / POINTS_AN_OCTAVE);
    }

    /** Values at all points. */
    static double[] sampled(DoubleUnaryOperator curve) {
        double[] y = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            y[i] = curve.applyAsDouble(hz(i));
        }
        return y;
    }

    /** The place of a frequency among the points, within them. */
    private static double place(double hz) {
        double place =
                POINTS_AN_OCTAVE * Math.log(Math.max(hz, LOWEST_HZ) / LOWEST_HZ) / Math.log(2);
        return Math.min(SIZE - 1.000001, place);
    }

    /** A curve between its points, straight over the logarithm; held beyond the ends. */
    static double at(double[] curve, double hz) {
        double place = place(hz);
        int i = (int) place;
        return curve[i] + (place - i) * (curve[i + 1] - curve[i]);
    }
}
