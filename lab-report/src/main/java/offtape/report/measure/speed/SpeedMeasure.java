package offtape.report.measure.speed;

import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedTrace;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Every reading of speed from a demodulated tone. */
final class SpeedMeasure {

    private static final String UNIT = "%";
    private static final int TRACE_POINTS = 600;

    /** The drift is read from straight lines through this much time, which average wow away. */
    private static final double DRIFT_WINDOW_S = 6;

    private static final double SHORTEST_FOR_DRIFT_S = 15;

    /** Share of a modulation reading that filters and detector may err by, k = 2. */
    private static final double READING_ERROR = 0.01;

    private final SpeedSignal signal;
    private final double[] modulation;

    SpeedMeasure(SpeedSignal signal) {
        this.signal = signal;
        this.modulation = signal.modulation();
    }

    /** No reading is possible; every figure gives the reason. */
    static Speed unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new Speed(q, q, q, q, q, q, q, q, q, q, null, List.of(), null, null);
    }

    /** All readings; those of modulation are unknown if the tone is too short for them. */
    Speed measure() {
        double floor = weightedFloor();
        SpeedLines lines = new SpeedLines(modulation, signal.rateHz());
        Modulation m = modulation(floor);
        return new Speed(
                Quantity.known(signal.mean(), UNIT, meanUncertainty()),
                drift(),
                m.weightedPeak(),
                m.weightedTwoSigma(),
                m.weightedRms(),
                m.unweightedPeak(),
                m.unweightedRms(),
                m.wowRms(),
                m.flutterRms(),
                Quantity.known(floor, UNIT, 0.2 * floor),
                signal.nominalHz(),
                lines.components(),
                trace(),
                lines.spectrum());
    }

    private record Modulation(
            Quantity weightedPeak,
            Quantity weightedTwoSigma,
            Quantity weightedRms,
            Quantity unweightedPeak,
            Quantity unweightedRms,
            Quantity wowRms,
            Quantity flutterRms) {}

    private Modulation modulation(double floor) {
        Iec60386 standard = Iec60386.atRate(signal.rateHz());
        if (!standard.isLongEnough(modulation.length)) {
            Quantity q =
                    Quantity.unknown("The tone is too short: wow and flutter needs 5 s or more.");
            return new Modulation(q, q, q, q, q, q, q);
        }
        double wide = unweightedFloor();
        double[] weighted = standard.weight(modulation);
        double[] settled = standard.settled(weighted);
        double[] unweighted = standard.unweighted(modulation);
        return new Modulation(
                reading(standard.highestReading(weighted), floor),
                reading(Iec60386.twoSigma(settled), floor),
                reading(rms(settled), floor),
                reading(standard.highestReading(unweighted), wide),
                reading(rms(standard.settled(unweighted)), wide),
                reading(rms(standard.settled(standard.wow(modulation))), floor),
                reading(rms(standard.settled(standard.flutter(modulation))), wide));
    }

    private static double rms(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v * v;
        }
        return Math.sqrt(sum / x.length);
    }

    private static Quantity reading(double value, double floor) {
        return Quantity.known(value, UNIT, Math.hypot(READING_ERROR * value, 2 * floor) + 0.0002);
    }

    /** Wow that does not fill whole periods moves the mean; noise moves it far less. */
    private double meanUncertainty() {
        double seconds = modulation.length / signal.rateHz();
        double[] slow = new double[Math.max(1, (int) seconds)];
        for (int s = 0; s < slow.length; s++) {
            int from = (int) (s * signal.rateHz());
            int to = (int) Math.min(modulation.length, (s + 1) * signal.rateHz());
            slow[s] = Arrays.stream(modulation, from, to).average().orElse(0);
        }
        return 2 * rms(slow) / Math.sqrt(slow.length) + 0.0002;
    }

    private Quantity drift() {
        double rate = signal.rateHz();
        if (modulation.length < SHORTEST_FOR_DRIFT_S * rate) {
            return Quantity.unknown("The tone is too short to tell drift from wow.");
        }
        int window = (int) (DRIFT_WINDOW_S * rate);
        int hop = window / 12;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int points = modulation.length / hop;
        for (int i = 0; i <= points; i++) {
            int at = Math.min(i * hop, modulation.length - 1);
            double value = line(at, window);
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return Quantity.known(high - low, UNIT, 0.1 * (high - low) + 0.0005);
    }

    /** Value at a sample of the straight line through the samples around it. */
    private double line(int at, int window) {
        int from = Math.max(0, Math.min(at - window / 2, modulation.length - window));
        SimpleRegression line = new SimpleRegression();
        for (int k = from; k < from + window; k += 10) {
            line.addData(k - at, modulation[k]);
        }
        return line.getIntercept();
    }

    private double weightedFloor() {
        double sum = 0;
        double step = 0.1;
        for (double f = 0.2; f < Math.min(200, signal.bandHz()); f += step) {
            double gain = Math.pow(10, Iec60386.weightingDb(f) / 20) * f;
            sum += gain * gain * step;
        }
        return floor(sum);
    }

    private double unweightedFloor() {
        return floor(Math.pow(Math.min(200, signal.bandHz()), 3) / 3);
    }

    /** Percent rms of phase noise seen as speed, given the integral of squared gain times rate². */
    private double floor(double integral) {
        return 100 / signal.nominalHz() * Math.sqrt(signal.noiseDensity() * integral);
    }

    private SpeedTrace trace() {
        double[] smooth = belowTwoHundred();
        int points = Math.min(TRACE_POINTS, smooth.length / 2);
        double[] seconds = new double[points];
        double[] low = new double[points];
        double[] high = new double[points];
        for (int i = 0; i < points; i++) {
            int from = (int) ((long) i * smooth.length / points);
            int to = (int) ((i + 1L) * smooth.length / points);
            seconds[i] = (from + to) / 2.0 / signal.rateHz();
            low[i] = Arrays.stream(smooth, from, to).min().orElse(0);
            high[i] = Arrays.stream(smooth, from, to).max().orElse(0);
        }
        return new SpeedTrace(seconds, low, high);
    }

    private double[] belowTwoHundred() {
        int n = RealFft.nextPowerOfTwo(2 * modulation.length);
        RealFft fft = RealFft.ofSize(n);
        Spectrum s = fft.forward(modulation);
        double binHz = s.binHz(signal.rateHz());
        double[] filtered = fft.inverse(s.times(k -> k * binHz <= 200 ? 1 : 0));
        return Arrays.copyOf(filtered, modulation.length);
    }
}
