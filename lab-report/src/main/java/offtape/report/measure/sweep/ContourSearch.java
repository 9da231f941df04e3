package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.unit.Quantity;
import offtape.report.result.ContourPoint;

/**
 * Peaks and dips of the bass. Where the recorded wavelength nears the length of the head's face,
 * its ends take part in reading and the response ripples: f = v / λ. Looked for below the frequency
 * whose wavelength is 1 mm, but at least to 100 and at most to 400 Hz (common practice, no source).
 * A turn of the curve counts if it stands out of its surroundings by 0.3 dB and by six times the
 * standard uncertainty; a smooth roll-off has no turns.
 */
final class ContourSearch {

    private static final double LEAST_PROMINENCE_DB = 0.3;

    /** Of the expanded uncertainty, k = 2. */
    private static final double LEAST_SHARE = 3;

    private static final double SHORTEST_WAVE_MM = 1;
    private static final double LEAST_LIMIT_HZ = 100;
    private static final double MOST_LIMIT_HZ = 400;
    private static final double USUAL_LIMIT_HZ = 300;

    /** Nearer to its start than this factor the sweep's beginning still rings. */
    private static final double START_SHARE = 1.5;

    /** What lies up to here belongs to the surroundings. */
    private static final double SURROUNDINGS_HZ = 1000;

    private final ResponseCurve curve;
    private final OptionalDouble speedMmPerS;
    private final int end;

    /**
     * @param speedMmPerS nominal tape speed, if known
     */
    ContourSearch(ResponseCurve curve, OptionalDouble speedMmPerS) {
        this.curve = curve;
        this.speedMmPerS = speedMmPerS;
        this.end = curve.nearest(SURROUNDINGS_HZ);
    }

    /** The peaks and dips, of rising frequency. */
    List<ContourPoint> find() {
        double limit = limitHz();
        List<ContourPoint> found = new ArrayList<>();
        for (int i = 1; i < end && curve.hz()[i] < limit; i++) {
            boolean ringing = curve.hz()[i] < START_SHARE * curve.endHz(-1);
            for (int sign : ringing ? new int[0] : new int[] {1, -1}) {
                boolean turn = sign * (at(i) - at(i - 1)) > 0 && sign * (at(i) - at(i + 1)) >= 0;
                double prominence = turn ? prominence(i, sign) : 0;
                double least =
                        Math.max(LEAST_PROMINENCE_DB, LEAST_SHARE * curve.uncertaintyDb()[i]);
                if (prominence > least) {
                    found.add(point(i, sign, prominence));
                }
            }
        }
        return found;
    }

    private double limitHz() {
        return speedMmPerS.isPresent()
                ? Math.max(
                        LEAST_LIMIT_HZ,
                        Math.min(MOST_LIMIT_HZ, speedMmPerS.getAsDouble() / SHORTEST_WAVE_MM))
                : USUAL_LIMIT_HZ;
    }

    private double at(int i) {
        return curve.db()[i];
    }

    /**
     * How far one must go down from a peak (up from a dip) to get to a higher one (a lower one).
     */
    private double prominence(int i, int sign) {
        return Math.min(descent(i, sign, -1), descent(i, sign, 1));
    }

    private double descent(int i, int sign, int direction) {
        double deepest = 0;
        for (int j = i + direction; j >= 0 && j <= end; j += direction) {
            double down = sign * (at(i) - at(j));
            if (down < 0) {
                break;
            }
            deepest = Math.max(deepest, down);
        }
        return deepest;
    }

    /**
     * The vertex of the parabola through three points over the logarithm of frequency; it may lie
     * anywhere where the parabola is within the curve's uncertainty of its vertex.
     */
    private ContourPoint point(int i, int sign, double prominence) {
        double step = Math.log(curve.hz()[i + 1] / curve.hz()[i - 1]) / 2;
        double slope = (at(i + 1) - at(i - 1)) / 2;
        double bend = (at(i + 1) - 2 * at(i) + at(i - 1)) / 2;
        double shift = bend == 0 ? 0 : Math.max(-1, Math.min(1, -slope / (2 * bend)));
        double hz = curve.hz()[i] * Math.exp(shift * step);
        double uncertaintyDb = curve.uncertaintyDb()[i];
        double reach = reach(i, sign, uncertaintyDb);
        return new ContourPoint(
                sign > 0 ? "peak" : "dip",
                Quantity.known(hz, "Hz", reach),
                Quantity.known(at(i) + shift * (slope + shift * bend), "dB", uncertaintyDb),
                prominence,
                speedMmPerS.isPresent() ? speedMmPerS.getAsDouble() / hz : null);
    }

    /** How far from a turn the curve leaves it by more than a difference, the longer way, hertz. */
    private double reach(int i, int sign, double differenceDb) {
        double reach = 0;
        for (int direction : new int[] {-1, 1}) {
            int j = i + direction;
            while (j > 0 && j < end && sign * (at(i) - at(j)) <= differenceDb) {
                j += direction;
            }
            reach = Math.max(reach, Math.abs(curve.hz()[j] - curve.hz()[i]));
        }
        return reach;
    }
}
