package offtape.report.measure;

import java.util.Arrays;
import java.util.SplittableRandom;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.unit.Decibels;

/**
 * A wow-and-flutter meter that keeps to the standard as ours does, drawn from what the standard
 * leaves open: the true reading is that of some such meter. Its weighting is the table's before
 * rounding to tenths of a decibel, joined by our curve or by straight lines; its bands have edges
 * of other steepness; its detector reads the table's pulses within their tolerances.
 */
final class DrawnMeter {

    /**
     * Charge, leak and pointer, seconds, of detectors that read the pulses of {@code
     * wf-pulse-response} within tolerance behind our weighting: what is left of 1500 drawn evenly
     * from 22 to 34 ms, 0.25 to 0.5 s and 0.22 to 0.4 s.
     */
    private static final double[][] DETECTORS = {
        {0.0308, 0.357, 0.333},
        {0.0334, 0.355, 0.303},
        {0.0271, 0.314, 0.304},
        {0.0235, 0.316, 0.340},
        {0.0317, 0.341, 0.309},
        {0.0322, 0.331, 0.285},
        {0.0309, 0.349, 0.332},
        {0.0296, 0.337, 0.314},
        {0.0304, 0.347, 0.332},
        {0.0300, 0.320, 0.296},
        {0.0338, 0.372, 0.321},
        {0.0307, 0.352, 0.326},
        {0.0277, 0.317, 0.296},
        {0.0317, 0.355, 0.337},
        {0.0292, 0.355, 0.337},
        {0.0262, 0.325, 0.327},
        {0.0317, 0.349, 0.312},
        {0.0297, 0.357, 0.331},
        {0.0328, 0.346, 0.295},
        {0.0282, 0.343, 0.333},
        {0.0292, 0.337, 0.328},
        {0.0297, 0.342, 0.329},
        {0.0293, 0.338, 0.306}
    };

    private static final double ROUNDING_DB = 0.05;

    /** The row that everything is relative to is not rounded. */
    private static final int ROW_4_HZ = (int) Iec60386.weightingRow(4);

    private static final double LOWEST_HZ = 0.05;

    private final boolean straight;
    private final double[] roundingDb = new double[Iec60386.weightingRows() + 1];
    private final int lowOrder;
    private final int highOrder;
    private final double[] detector;

    DrawnMeter(SplittableRandom random) {
        straight = random.nextBoolean();
        Arrays.setAll(roundingDb, r -> ROUNDING_DB * (2 * random.nextDouble() - 1));
        roundingDb[ROW_4_HZ] = 0;
        lowOrder = random.nextInt(2, 7);
        highOrder = random.nextInt(6, 31);
        detector = DETECTORS[random.nextInt(DETECTORS.length)];
    }

    private double gain(FlutterBand band, double hz) {
        return switch (band) {
            case WEIGHTED -> weighting(hz);
            case WOW -> Math.sqrt(high(hz, 0.2) * low(hz, 6, lowOrder));
            case FLUTTER -> Math.sqrt(high(hz, 6) * low(hz, 200, highOrder));
            case AMERICAN -> Math.sqrt(high(hz, 0.5) * low(hz, 200, highOrder));
            case UNWEIGHTED, CHARTED -> Math.sqrt(high(hz, 0.2) * low(hz, 200, highOrder));
        };
    }

    private double weighting(double hz) {
        double place = Iec60386.weightingRow(hz);
        int row = (int) place;
        double part = place - row;
        double db = roundingDb[row] * (1 - part) + roundingDb[row + 1] * part;
        double gain = straight ? FlutterBand.WEIGHTED.sharpGain(hz) : FlutterBand.WEIGHTED.gain(hz);
        return gain * Decibels.toAmplitude(db);
    }

    private double high(double hz, double edgeHz) {
        return low(edgeHz, hz, lowOrder);
    }

    private static double low(double hz, double edgeHz, int order) {
        return 1 / (1 + Math.pow(hz / edgeHz, 2 * order));
    }

    /** What this meter makes of what ours has filtered. */
    double[] refiltered(FlutterBand band, double[] filtered, double rateHz) {
        int n = RealFft.nextPowerOfTwo(2 * filtered.length);
        RealFft fft = RealFft.ofSize(n);
        Spectrum s = fft.forward(filtered);
        double bin = s.binHz(rateHz);
        double[] x =
                fft.inverse(
                        s.times(
                                k ->
                                        k * bin < LOWEST_HZ
                                                ? 1
                                                : gain(band, k * bin) / band.gain(k * bin)));
        return Arrays.copyOf(x, filtered.length);
    }

    /** The reading over time: half the height of the analytic signal, stored and shown. */
    double[] quasiPeak(double[] x, double rateHz) {
        int n = RealFft.nextPowerOfTwo(2 * x.length);
        RealFft fft = RealFft.ofSize(n);
        Spectrum s = fft.forward(x);
        double[] re = new double[s.bins()];
        double[] im = new double[s.bins()];
        for (int k = 0; k < re.length; k++) {
            re[k] = s.im(k);
            im[k] = -s.re(k);
        }
        double[] turned = fft.inverse(Spectrum.of(n, re, im));
        double charge = -Math.expm1(-1 / (detector[0] * rateHz));
        double keep = Math.exp(-1 / (detector[1] * rateHz));
        double pointer = -Math.expm1(-1 / (detector[2] * rateHz));
        double store = 0;
        double shown = 0;
        double[] reading = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            store *= keep;
            store += charge * Math.max(0, Math.hypot(x[i], turned[i]) - store);
            shown += pointer * ((1 - keep * (1 - charge)) / charge * store - shown);
            reading[i] = shown;
        }
        return reading;
    }
}
