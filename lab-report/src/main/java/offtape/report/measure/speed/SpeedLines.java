package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;

/** The spectrum of a speed deviation and the steady lines in it. */
final class SpeedLines {

    private static final double LOWEST_HZ = 0.15;
    private static final double HIGHEST_HZ = 200;
    private static final int MOST = 12;
    private static final int POINTS = 360;

    /** A line stands this many times over the median of its surroundings. */
    private static final double STANDS_OUT = 4.5;

    private static final double LEAST_PERCENT = 0.001;

    private final double[] peak;
    private final double binHz;

    /**
     * Transforms a deviation.
     *
     * @param modulation deviation about its mean, percent
     * @param rateHz its sample rate
     */
    SpeedLines(double[] modulation, double rateHz) {
        int n = RealFft.nextPowerOfTwo(2 * modulation.length);
        double[] windowed = new double[modulation.length];
        for (int i = 0; i < windowed.length; i++) {
            windowed[i] =
                    modulation[i]
                            * (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / windowed.length));
        }
        Spectrum spectrum = RealFft.ofSize(n).forward(windowed);
        this.binHz = spectrum.binHz(rateHz);
        int bins = (int) Math.min(spectrum.bins(), HIGHEST_HZ / binHz + 2);
        this.peak = new double[bins];
        for (int k = 0; k < bins; k++) {
            peak[k] = 2 * spectrum.magnitude(k) / (windowed.length / 2.0);
        }
    }

    /** Steady lines, largest first. */
    List<SpeedComponent> components() {
        List<SpeedComponent> lines = new ArrayList<>();
        for (int k = Math.max(3, (int) (LOWEST_HZ / binHz)); k < peak.length - 3; k++) {
            boolean top =
                    peak[k] >= peak[k - 1]
                            && peak[k] > peak[k + 1]
                            && peak[k] > peak[k - 3]
                            && peak[k] > peak[k + 3];
            if (top && peak[k] > LEAST_PERCENT && peak[k] > STANDS_OUT * surroundings(k)) {
                lines.add(line(k));
            }
        }
        lines.sort(Comparator.comparingDouble(c -> -c.peakPercent()));
        return lines.subList(0, Math.min(MOST, lines.size()));
    }

    /** Frequency and height by the parabola through the logarithms of three bins. */
    private SpeedComponent line(int k) {
        double a = Math.log(peak[k - 1] + 1e-300);
        double b = Math.log(peak[k]);
        double c = Math.log(peak[k + 1] + 1e-300);
        double shift = 0.5 * (a - c) / (a - 2 * b + c);
        double height = Math.exp(b - 0.25 * (a - c) * shift);
        return new SpeedComponent((k + shift) * binHz, height, null);
    }

    /** The higher of the medians to either side, so that the edge of a band makes no line. */
    private double surroundings(int k) {
        int reach = Math.max(24, k / 4);
        double below = median(Math.max(1, k - reach), k);
        double above = median(k + 1, Math.min(peak.length, k + reach + 1));
        return Math.max(below, above);
    }

    private double median(int from, int to) {
        double[] sorted = Arrays.copyOfRange(peak, from, Math.max(from + 1, to));
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** The spectrum for charts: the highest value in each of some hundred logarithmic bands. */
    SpeedSpectrum spectrum() {
        List<double[]> points = new ArrayList<>();
        double ratio = Math.pow(HIGHEST_HZ / LOWEST_HZ, 1.0 / POINTS);
        double low = LOWEST_HZ;
        while (low < HIGHEST_HZ) {
            double high = low * ratio;
            int from = (int) Math.ceil(low / binHz);
            int to = (int) Math.ceil(high / binHz);
            double[] best = null;
            for (int k = from; k < Math.min(to, peak.length); k++) {
                if (best == null || peak[k] > best[1]) {
                    best = new double[] {k * binHz, peak[k]};
                }
            }
            if (best != null) {
                points.add(best);
            }
            low = high;
        }
        return new SpeedSpectrum(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }
}
