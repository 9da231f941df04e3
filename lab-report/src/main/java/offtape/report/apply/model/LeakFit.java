package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.CrosstalkCurve;

/** What each channel hears of the other, over frequency where a sweep told it, else evenly. */
final class LeakFit {

    private final Channels channels;

    LeakFit(Channels channels) {
        this.channels = channels;
    }

    /** By hearing channel, left and right; null where no leak is known. */
    LeakModel[] leaks() {
        return new LeakModel[] {
            leak("right", channels.crosstalkRightToLeft(), channels.leakPhaseRightToLeft()),
            leak("left", channels.crosstalkLeftToRight(), channels.leakPhaseLeftToRight())
        };
    }

    private LeakModel leak(String from, Quantity figure, Double phaseDegrees) {
        for (CrosstalkCurve curve : channels.crosstalk()) {
            LeakModel over = curve.from().equals(from) ? over(curve) : null;
            if (over != null) {
                return over;
            }
        }
        if (!figure.isKnown()) {
            return null;
        }
        double phase = phaseDegrees == null ? 0 : Math.toRadians(phaseDegrees);
        double turned = Math.PI * Math.rint(phase / Math.PI);
        return new LeakModel(even(figure.value()), even(turned));
    }

    private static PointCurve even(double value) {
        return new PointCurve(new double[] {100, 10_000}, new double[] {value, value});
    }

    private static LeakModel over(CrosstalkCurve curve) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            if (curve.crosstalkDb()[i] != null) {
                Double[] phases = curve.phaseDegrees();
                double phase = phases == null || phases[i] == null ? 0 : Math.toRadians(phases[i]);
                double before = points.isEmpty() ? phase : points.get(points.size() - 1)[2];
                phase -= 2 * Math.PI * Math.rint((phase - before) / (2 * Math.PI));
                points.add(new double[] {curve.frequencyHz()[i], curve.crosstalkDb()[i], phase});
            }
        }
        if (points.size() < 2) {
            return null;
        }
        double[] hz = column(points, 0);
        return new LeakModel(
                new PointCurve(hz, column(points, 1)), new PointCurve(hz, column(points, 2)));
    }

    private static double[] column(List<double[]> points, int n) {
        return points.stream().mapToDouble(p -> p[n]).toArray();
    }
}
