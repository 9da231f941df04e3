package offtape.report.measure.sweep;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.InterfaceResponse;
import offtape.report.result.Response;

/**
 * A response as points, and where it crosses limits. Between points it runs straight over the
 * logarithm of frequency.
 *
 * @param hz frequencies, rising, at least one
 * @param db magnitudes, 0 at 1 kHz, same length
 * @param uncertaintyDb expanded uncertainty (k = 2) of each, same length
 */
record ResponseCurve(double[] hz, double[] db, double[] uncertaintyDb) {

    static ResponseCurve of(Response response) {
        return new ResponseCurve(
                response.frequencyHz(), response.magnitudeDb(), response.uncertaintyDb());
    }

    /**
     * The curve as it would be without an interface on the way, as far as that lets through;
     * uncertainties in quadrature.
     *
     * @param speedRatio frequency in the recording over that in the programme
     */
    ResponseCurve over(InterfaceResponse known, double speedRatio) {
        int[] kept =
                IntStream.range(0, size()).filter(i -> known.passes(hz[i] * speedRatio)).toArray();
        return new ResponseCurve(
                of(kept, i -> hz[i]),
                of(kept, i -> db[i] - known.levelDb(hz[i] * speedRatio)),
                of(
                        kept,
                        i ->
                                Math.hypot(
                                        uncertaintyDb[i],
                                        known.uncertaintyDb(hz[i] * speedRatio))));
    }

    private static double[] of(int[] indices, IntToDoubleFunction value) {
        return Arrays.stream(indices).mapToDouble(value).toArray();
    }

    int size() {
        return hz.length;
    }

    /** Number of the point nearest to a frequency. */
    int nearest(double frequencyHz) {
        int best = 0;
        for (int i = 0; i < size(); i++) {
            if (Math.abs(hz[i] - frequencyHz) < Math.abs(hz[best] - frequencyHz)) {
                best = i;
            }
        }
        return best;
    }

    /** The last frequency in a direction. */
    double endHz(int direction) {
        return hz[direction > 0 ? size() - 1 : 0];
    }

    /**
     * The first frequency on the way outward from 1 kHz at which an excess rises above 0; NaN if it
     * does not as far as the curve reaches.
     *
     * @param direction 1 up, −1 down
     * @param excess dB at a point, above 0 where a limit is left
     */
    double crossingHz(int direction, IntToDoubleFunction excess) {
        int start = nearest(1000);
        if (excess.applyAsDouble(start) > 0) {
            return hz[start];
        }
        for (int i = start + direction; i >= 0 && i < size(); i += direction) {
            double outside = excess.applyAsDouble(i);
            if (outside > 0) {
                double inside = excess.applyAsDouble(i - direction);
                double part = inside / (inside - outside);
                return hz[i - direction] * Math.pow(hz[i] / hz[i - direction], part);
            }
        }
        return Double.NaN;
    }

    /**
     * The same as a figure. Its uncertainty is how far the crossing moves, the larger way, when the
     * curve is moved by its own uncertainty and by how far it bends away from a straight line
     * between points; where the curve then no longer crosses, as far as it reaches.
     *
     * @param otherwise the reason if there is no crossing
     */
    Quantity crossing(int direction, IntToDoubleFunction excess, String otherwise) {
        double at = crossingHz(direction, excess);
        if (Double.isNaN(at)) {
            return Quantity.unknown(otherwise);
        }
        double near = crossingHz(direction, i -> excess.applyAsDouble(i) + doubtDb(i));
        double far = crossingHz(direction, i -> excess.applyAsDouble(i) - doubtDb(i));
        double farthest = Double.isNaN(far) ? endHz(direction) : far;
        return Quantity.known(at, "Hz", Math.max(Math.abs(at - near), Math.abs(farthest - at)));
    }

    /** A curve of second difference D lies D/8 from the chord halfway between two points. */
    private double doubtDb(int i) {
        boolean inside = i > 0 && i + 1 < size();
        double bend = inside ? db[i - 1] - 2 * db[i] + db[i + 1] : 0;
        return uncertaintyDb[i] + Math.abs(bend) / 8;
    }
}
