package offtape.report.measure.channel;

/** A straight line through zero, fitted to phases over angular frequency by weighted squares. */
final class PhaseLine {

    private final PhaseBands bands;
    private final double slope;
    private final double down;

    PhaseLine(PhaseBands bands) {
        this.bands = bands;
        double up = 0;
        double squares = 0;
        for (int i = 0; i < bands.size(); i++) {
            double w = bands.radiansPerS(i);
            up += bands.weight(i) * w * bands.phase(i);
            squares += bands.weight(i) * w * w;
        }
        slope = up / squares;
        down = squares;
    }

    /** Seconds. */
    double slope() {
        return slope;
    }

    /** Sum of squares left, each over its variance. */
    double rest() {
        double rest = 0;
        for (int i = 0; i < bands.size(); i++) {
            rest += bands.weight(i) * residual(i) * residual(i);
        }
        return rest;
    }

    /**
     * Standard uncertainty of the slope, seconds, by the weights or the scatter if that is more.
     */
    double slopeError() {
        return Math.sqrt(Math.max(1, rest() / (bands.size() - 1)) / down);
    }

    /** Weighted root mean square of what is left, radians. */
    double scatter() {
        double weights = 0;
        for (int i = 0; i < bands.size(); i++) {
            weights += bands.weight(i);
        }
        return Math.sqrt(rest() / weights);
    }

    private double residual(int i) {
        return bands.phase(i) - slope * bands.radiansPerS(i);
    }

    /** Value at 0 Hz of a line with free intercept, radians: near a multiple of π. */
    double startPhase() {
        double s = 0;
        double sx = 0;
        double sy = 0;
        double sxy = 0;
        for (int i = 0; i < bands.size(); i++) {
            double weight = bands.weight(i);
            double x = bands.radiansPerS(i);
            s += weight;
            sx += weight * x;
            sy += weight * bands.phase(i);
            sxy += weight * x * bands.phase(i);
        }
        return (sy * down - sx * sxy) / (s * down - sx * sx);
    }
}
