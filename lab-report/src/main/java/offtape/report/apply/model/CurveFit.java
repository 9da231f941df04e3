package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.model.Bend;
import offtape.core.model.CurveHarmonics;
import offtape.core.model.Emphasis;
import offtape.core.model.TapeCurve;
import offtape.report.apply.model.CurveSample.Kind;

/**
 * The curve of a channel from the steps of its ladders: shares of hyperbolic tangents and of cubic
 * curves of several limits, by least squares with shares that are not negative and add up to one at
 * most. Both gain and third harmonic of such a sum are sums too.
 */
final class CurveFit {

    private static final double LOWEST_LIMIT_DB = -7.5;
    private static final double HIGHEST_LIMIT_DB = 30;
    private static final double LIMIT_STEP_DB = 2.5;
    private static final double SUM_WEIGHT = 1e4;

    /** The even part may take this share of the slope at twice the reference. */
    private static final double MOST_EVEN = 0.2;

    private final List<CurveSample> samples;
    private final DoubleUnaryOperator levels;
    private final List<Bend> bends = bends();

    /**
     * @param samples gains and harmonics of tones
     * @param levels the machine's response, dB at a frequency
     */
    CurveFit(List<CurveSample> samples, DoubleUnaryOperator levels) {
        this.samples = samples;
        this.levels = levels;
    }

    private static List<Bend> bends() {
        List<Bend> all = new ArrayList<>();
        for (double db = LOWEST_LIMIT_DB; db <= HIGHEST_LIMIT_DB; db += LIMIT_STEP_DB) {
            all.add(new Bend(Bend.Shape.TANH, Math.pow(10, db / 20)));
            all.add(new Bend(Bend.Shape.CUBIC, Math.pow(10, db / 20)));
        }
        return all;
    }

    /** The curve behind an emphasis; its even part is positive. */
    BentModel behind(Emphasis emphasis) {
        List<double[]> rows = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (CurveSample s : samples) {
            if (s.kind() == Kind.GAIN || s.kind() == Kind.THIRD) {
                rows.add(row(s, emphasis));
                values.add(value(s) / s.deviation());
            }
        }
        double[] sum = new double[bends.size() + 1];
        java.util.Arrays.fill(sum, SUM_WEIGHT);
        rows.add(sum);
        values.add(SUM_WEIGHT);
        double[] x =
                NonNegative.solve(
                        rows.toArray(double[][]::new),
                        values.stream().mapToDouble(Double::doubleValue).toArray());
        TapeCurve odd = curve(x, 0);
        return new BentModel(curve(x, even(odd, emphasis)), emphasis);
    }

    private static double value(CurveSample s) {
        return s.kind() == Kind.GAIN ? 1 - s.value() : s.value();
    }

    /** A third harmonic is told re the fundamental that is left, hardly less than the whole. */
    private double[] row(CurveSample s, Emphasis emphasis) {
        double peak = Math.pow(10, s.levelDb() / 20) * emphasis.gain(s.frequencyHz());
        double behind =
                s.kind() == Kind.GAIN ? 0 : BentModel.behind(3, s.frequencyHz(), emphasis, levels);
        double[] row = new double[bends.size() + 1];
        for (int j = 0; j < bends.size(); j++) {
            double[] ratios = bends.get(j).ratios(peak);
            double lost = 1 - ratios[0];
            // K3·(1 − Σ share·lost) = Σ share·third
            double third = Math.abs(ratios[1]) * behind + s.value() * lost;
            row[j] = (s.kind() == Kind.GAIN ? lost : third) / s.deviation();
        }
        return row;
    }

    private TapeCurve curve(double[] x, double even) {
        List<Bend> used = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        double sum = 0;
        for (int j = 0; j < bends.size(); j++) {
            sum += x[j];
        }
        for (int j = 0; j < bends.size(); j++) {
            if (x[j] > 1e-9) {
                used.add(bends.get(j));
                shares.add(x[j] / Math.max(1, sum));
            }
        }
        return new TapeCurve(used, shares, even);
    }

    private double even(TapeCurve odd, Emphasis emphasis) {
        double along = 0;
        double size = 0;
        for (CurveSample s : samples) {
            if (s.kind() == Kind.SECOND) {
                double peak = Math.pow(10, s.levelDb() / 20) * emphasis.gain(s.frequencyHz());
                double[] square = CurveHarmonics.of(x -> odd.of(x) * odd.of(x), peak);
                double unit =
                        Math.abs(square[2])
                                / odd.harmonics(peak)[1]
                                * BentModel.behind(2, s.frequencyHz(), emphasis, levels)
                                / s.deviation();
                along += unit * s.value() / s.deviation();
                size += unit * unit;
            }
        }
        return size == 0 ? 0 : Math.min(MOST_EVEN, along / size);
    }
}
