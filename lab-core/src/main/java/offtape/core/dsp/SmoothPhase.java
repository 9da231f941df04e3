package offtape.core.dsp;

import java.util.function.DoubleUnaryOperator;

/**
 * A phase that is smooth over some tens of values: a parabola through three exact phases a stretch,
 * run through by multiplication.
 */
record SmoothPhase(DoubleUnaryOperator phase) implements PhaseLaw {

    private static final int STRETCH = 32;

    @Override
    public double phaseRadians(double seconds) {
        return phase.applyAsDouble(seconds);
    }

    @Override
    public void fill(double startSeconds, double stepSeconds, double[] cos, double[] sin) {
        double first = phaseRadians(startSeconds);
        for (int from = 0; from < cos.length; from += STRETCH) {
            double middle = phaseRadians(startSeconds + (from + STRETCH / 2) * stepSeconds);
            double last = phaseRadians(startSeconds + (from + STRETCH) * stepSeconds);
            double bend = 2 * (first - 2 * middle + last) / (STRETCH * STRETCH);
            double slope = (4 * middle - 3 * first - last) / STRETCH;
            stretch(cos, sin, from, first, slope, bend);
            first = last;
        }
    }

    /** Phase first + slope·k + bend·k² at the k-th value of a stretch. */
    private static void stretch(
            double[] cos, double[] sin, int from, double first, double slope, double bend) {
        double c = Math.cos(first);
        double s = Math.sin(first);
        double turnC = Math.cos(slope + bend);
        double turnS = Math.sin(slope + bend);
        double growC = Math.cos(2 * bend);
        double growS = Math.sin(2 * bend);
        int to = Math.min(cos.length, from + STRETCH);
        for (int i = from; i < to; i++) {
            cos[i] = c;
            sin[i] = s;
            double next = c * turnC - s * turnS;
            s = s * turnC + c * turnS;
            c = next;
            double turn = turnC * growC - turnS * growS;
            turnS = turnS * growC + turnC * growS;
            turnC = turn;
        }
    }
}
