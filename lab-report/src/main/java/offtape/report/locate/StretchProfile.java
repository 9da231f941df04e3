package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoint;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * The slow course of the stretch of time over a programme, a parabola at most: wow, which every
 * short reading holds, must not be taken for drift.
 */
final class StretchProfile {

    private static final int FEWEST_FOR_PARABOLA = 8;
    private static final int FEWEST_FOR_LINE = 3;

    private final double[] coefficients;
    private final double lengthSeconds;

    private StretchProfile(double[] coefficients, double lengthSeconds) {
        this.coefficients = coefficients;
        this.lengthSeconds = lengthSeconds;
    }

    /**
     * Fits readings, leaving out those far from the rest.
     *
     * @param coarse stretch to use if there are no readings
     * @param lengthSeconds length of the programme
     */
    static StretchProfile fit(
            List<ToneStretches.Reading> readings, double coarse, double lengthSeconds) {
        double[] first = coefficients(readings, coarse, lengthSeconds);
        StretchProfile rough = new StretchProfile(first, lengthSeconds);
        double[] distances = readings.stream().mapToDouble(r -> rough.distance(r)).toArray();
        double limit = distances.length == 0 ? 0 : 5 * new Median().evaluate(distances) + 1e-6;
        List<ToneStretches.Reading> kept =
                readings.stream().filter(r -> rough.distance(r) <= limit).toList();
        return new StretchProfile(coefficients(kept, coarse, lengthSeconds), lengthSeconds);
    }

    private double distance(ToneStretches.Reading r) {
        return Math.abs(r.stretch() - at(r.programmeSeconds()));
    }

    private static double[] coefficients(
            List<ToneStretches.Reading> readings, double coarse, double length) {
        if (readings.isEmpty()) {
            return new double[] {coarse};
        }
        List<WeightedObservedPoint> points = new ArrayList<>();
        double low = 1;
        double high = -1;
        for (ToneStretches.Reading r : readings) {
            double x = 2 * r.programmeSeconds() / length - 1;
            points.add(new WeightedObservedPoint(r.seconds(), x, r.stretch()));
            low = Math.min(low, x);
            high = Math.max(high, x);
        }
        boolean wide = high - low > 1;
        int degree = wide && readings.size() >= FEWEST_FOR_LINE ? 1 : 0;
        if (wide && readings.size() >= FEWEST_FOR_PARABOLA) {
            degree = 2;
        }
        return PolynomialCurveFitter.create(degree).fit(points);
    }

    /** Stretch at a time in the programme, seconds. */
    double at(double programmeSeconds) {
        double x = 2 * programmeSeconds / lengthSeconds - 1;
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * x + coefficients[i];
        }
        return sum;
    }
}
