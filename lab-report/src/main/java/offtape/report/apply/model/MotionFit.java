package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;
import offtape.report.result.SpeedComponent;

/**
 * The random rest of a motion beside its lines. Its course over rate is that of the spectrum
 * without the lines; how strong it is below and above 6 Hz is what the readings have beyond the
 * lines, since a spectrum for charts tells the highest of many bins.
 */
final class MotionFit {

    private static final double LOWEST_HZ = 0.2;
    private static final double SPLIT_HZ = 6;
    private static final double HIGHEST_HZ = 200;
    private static final double LONGEST_S = 600;

    /** How far a line reaches under the window, in bins of 1/T. */
    private static final double LINE_BINS = 3;

    /** Hann's window: power of noise in a hertz against a sine of the peak it shows. */
    private static final double WINDOW = 3;

    private static final int MOST_BINS = 1000;

    private final List<SpeedComponent> lines;
    private final double seconds;

    /**
     * @param lines of the deviation
     * @param seconds length of what the spectrum is of
     */
    MotionFit(List<SpeedComponent> lines, double seconds) {
        this.lines = lines;
        this.seconds = Math.min(LONGEST_S, seconds);
    }

    MotionModel fit(double[] hz, double[] peak, Quantity wow, Quantity flutter, Quantity weighted) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < hz.length; i++) {
            if (peak[i] > 0 && !isLine(hz[i])) {
                double power = peak[i] * peak[i] * seconds / WINDOW / highest(hz, i);
                points.add(new double[] {hz[i], 10 * Math.log10(power)});
            }
        }
        if (points.size() < 2) {
            return new MotionModel(lines, null, LOWEST_HZ, HIGHEST_HZ);
        }
        double top = Math.min(HIGHEST_HZ, hz[hz.length - 1]);
        double[] scale =
                scale(
                        new MotionModel(lines, curve(points), LOWEST_HZ, top),
                        wow,
                        flutter,
                        weighted);
        for (double[] p : points) {
            p[1] += 10 * Math.log10(Math.max(1e-6, scale[p[0] < SPLIT_HZ ? 0 : 1]));
        }
        return new MotionModel(lines, curve(points), LOWEST_HZ, top);
    }

    /** The spectrum tells the highest of several bins, which noise makes so much higher. */
    private double highest(double[] hz, int i) {
        double width = i + 1 < hz.length ? hz[i + 1] - hz[i] : hz[i] - hz[i - 1];
        double sum = 1;
        for (int n = 2; n <= Math.min(MOST_BINS, (int) (width * seconds)); n++) {
            sum += 1.0 / n;
        }
        return sum;
    }

    private boolean isLine(double hz) {
        for (SpeedComponent line : lines) {
            double end = line.moves() ? line.endFrequencyHz() : line.frequencyHz();
            double low = Math.min(line.frequencyHz(), end) - LINE_BINS / seconds;
            double high = Math.max(line.frequencyHz(), end) + LINE_BINS / seconds;
            if (hz > low && hz < high) {
                return true;
            }
        }
        return false;
    }

    private static PointCurve curve(List<double[]> points) {
        return new PointCurve(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }

    /** Factors of power below and above the split with which the rest makes up the readings. */
    private double[] scale(MotionModel raw, Quantity wow, Quantity flutter, Quantity weighted) {
        List<double[]> rows = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        Quantity[] readings = {wow, flutter, weighted};
        FlutterBand[] bands = {FlutterBand.WOW, FlutterBand.FLUTTER, FlutterBand.WEIGHTED};
        for (int n = 0; n < readings.length; n++) {
            if (readings[n].isKnown() && readings[n].value() > 0) {
                double power = readings[n].value() * readings[n].value();
                rows.add(
                        new double[] {
                            rest(raw, bands[n], raw.lowHz(), SPLIT_HZ) / power,
                            rest(raw, bands[n], SPLIT_HZ, raw.highHz()) / power
                        });
                values.add(1 - linePower(bands[n]) / power);
            }
        }
        return rows.size() < 2
                ? new double[] {1, 1}
                : NonNegative.solve(
                        rows.toArray(double[][]::new),
                        values.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private double linePower(FlutterBand band) {
        double sum = 0;
        for (SpeedComponent line : lines) {
            double peak = line.peakPercent() * band.gain(line.middleHz());
            sum += peak * peak / 2;
        }
        return sum;
    }

    private static double rest(MotionModel raw, FlutterBand band, double fromHz, double toHz) {
        double sum = 0;
        double ratio = Math.pow(2, 1.0 / 48);
        for (double hz = fromHz; hz * ratio <= toHz; hz *= ratio) {
            double middle = hz * Math.sqrt(ratio);
            double gain = band.gain(middle);
            sum += gain * gain * Math.pow(10, raw.restDb(middle) / 10) * hz * (ratio - 1);
        }
        return sum;
    }
}
