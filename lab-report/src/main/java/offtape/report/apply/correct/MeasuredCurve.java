package offtape.report.apply.correct;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.report.result.Response;

/**
 * A response as it was measured.
 *
 * @param hz frequencies of the programme, rising
 * @param db magnitudes re 1 kHz, same length
 * @param uncertaintyDb expanded uncertainty (k = 2) of each, same length
 */
record MeasuredCurve(double[] hz, double[] db, double[] uncertaintyDb) {

    /** Widths over which a parabola may be laid, octaves; the curve itself has the first. */
    private static final double[] WIDTHS = {1.0 / 6, 1.0 / 3, 2.0 / 3, 1};

    /** A smoothed point that is surer than this is smooth enough, dB, k = 2. */
    private static final double SURE_DB = 0.1;

    static MeasuredCurve of(Response response) {
        return new MeasuredCurve(
                response.frequencyHz(), response.magnitudeDb(), response.uncertaintyDb());
    }

    /** The mean of two, where both were measured. */
    static MeasuredCurve mean(MeasuredCurve one, MeasuredCurve other) {
        Curve second = new Curve(other.hz, other.db);
        Curve doubt = new Curve(other.hz, other.uncertaintyDb);
        int[] both =
                IntStream.range(0, one.hz.length)
                        .filter(i -> one.hz[i] >= other.hz[0] && one.hz[i] <= second.lastHz())
                        .toArray();
        double[] hz = Arrays.stream(both).mapToDouble(i -> one.hz[i]).toArray();
        return new MeasuredCurve(
                hz,
                Arrays.stream(both)
                        .mapToDouble(i -> (one.db[i] + second.at(one.hz[i])) / 2)
                        .toArray(),
                Arrays.stream(both)
                        .mapToDouble(i -> Math.hypot(one.uncertaintyDb[i], doubt.at(one.hz[i])) / 2)
                        .toArray());
    }

    Curve curve() {
        return new Curve(hz, db);
    }

    /**
     * The curve as far as its uncertainty lets it be told: where a point is unsure, a parabola over
     * a wider stretch stands in its place, up to an octave wide.
     */
    Curve smoothed() {
        return new Curve(hz, IntStream.range(0, hz.length).mapToDouble(this::smoothed).toArray());
    }

    private double smoothed(int i) {
        int width = 0;
        // noise is independent from one sixth of an octave to the next
        while (width < WIDTHS.length - 1
                && uncertaintyDb[i] * Math.sqrt(WIDTHS[0] / WIDTHS[width]) > SURE_DB) {
            width++;
        }
        return width == 0 ? db[i] : parabola(i, WIDTHS[width]);
    }

    private double parabola(int i, double octaves) {
        LocalParabola fit = new LocalParabola();
        for (int k = 0; k < hz.length; k++) {
            double x = 2 * Math.log(hz[k] / hz[i]) / Math.log(2) / octaves;
            if (Math.abs(x) < 1) {
                double near = 1 - x * x;
                double sure = Math.max(uncertaintyDb[k], SURE_DB);
                fit.add(x, db[k], near * near / (sure * sure));
            }
        }
        return fit.valueAtZero(db[i]);
    }
}
