package offtape.report.measure.channel;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.Complex;
import offtape.report.result.PairPhaseCurve;

/**
 * The phase of the left channel against the right in the bands of a sweep in which both are heard.
 */
final class PhaseBands {

    private static final double LOWEST_HZ = 100;
    private static final double HIGHEST_HZ = 16_000;

    /** Phase error of a band at a perfect signal-to-noise ratio, radians. */
    private static final double OWN_PHASE_ERROR = 0.003;

    /** Bands behind a point of the difference that is told: a twelfth of an octave. */
    private static final int TOGETHER = 4;

    private final double[] radiansPerS;
    private final double[] phase;
    private final double[] weight;
    private final double[] responsePhase;

    /**
     * Phases that are known.
     *
     * @param radiansPerS angular frequencies in the recording, rising
     * @param phase radians, positive if right is late
     * @param weight one over the variance of each phase
     * @param responsePhase radians that the responses of the channels add to each phase
     */
    PhaseBands(double[] radiansPerS, double[] phase, double[] weight, double[] responsePhase) {
        this.radiansPerS = radiansPerS;
        this.phase = phase;
        this.weight = weight;
        this.responsePhase = responsePhase;
    }

    /** Reads a sweep on both channels, the leak taken out. */
    static PhaseBands of(
            FollowedSweep sweep, NoiseDensities noise, double speedRatio, Leakage leakage) {
        int n = sweep.size();
        double[] hz = new double[n];
        double[] w = new double[n];
        double[] phase = new double[n];
        double[] weight = new double[n];
        double[] logGain = new double[n];
        int count = 0;
        double previous = 0;
        for (int i = 0; i < n; i++) {
            double quality = quality(sweep, noise, i, speedRatio);
            if (quality > 0) {
                hz[count] = sweep.frequencyHz(i);
                Complex heard = new Complex(sweep.crossRe(i), sweep.crossIm(i));
                double left = sweep.power(0, i);
                double right = sweep.power(1, i);
                double p = leakage.unmixed(heard, left, right, hz[count]).phase();
                p -= 2 * Math.PI * Math.rint((p - previous) / (2 * Math.PI));
                previous = p;
                w[count] = 2 * Math.PI * hz[count] * speedRatio;
                phase[count] = p;
                weight[count] = quality;
                double cleanLeft = left - noisePower(sweep, noise, 0, i, speedRatio);
                double cleanRight = right - noisePower(sweep, noise, 1, i, speedRatio);
                logGain[count] = Math.log(cleanLeft / cleanRight) / 2;
                count++;
            }
        }
        double[] bode = ResponsePhase.of(Arrays.copyOf(hz, count), Arrays.copyOf(logGain, count));
        return within(hz, new PhaseBands(w, phase, weight, bode), count);
    }

    /** Keeps the bands in which the delay is told; the responses are known beyond them. */
    private static PhaseBands within(double[] hz, PhaseBands all, int count) {
        int[] kept =
                IntStream.range(0, count)
                        .filter(i -> hz[i] >= LOWEST_HZ && hz[i] <= HIGHEST_HZ)
                        .toArray();
        return new PhaseBands(
                pick(all.radiansPerS, kept),
                pick(all.phase, kept),
                pick(all.weight, kept),
                pick(all.responsePhase, kept));
    }

    private static double[] pick(double[] x, int[] kept) {
        return Arrays.stream(kept).mapToDouble(i -> x[i]).toArray();
    }

    private static double noisePower(
            FollowedSweep sweep, NoiseDensities noise, int channel, int i, double speedRatio) {
        return sweep.noisePower(
                channel, i, noise == null ? null : noise.densities()[channel], speedRatio);
    }

    /** One over the variance of a band's phase; 0 if a channel is not clear of the noise there. */
    private static double quality(
            FollowedSweep sweep, NoiseDensities noise, int i, double speedRatio) {
        double variance = OWN_PHASE_ERROR * OWN_PHASE_ERROR;
        for (int c = 0; c < 2; c++) {
            double floor = noisePower(sweep, noise, c, i, speedRatio);
            double own = sweep.power(c, i) - floor;
            if (!(own > 3 * floor)) {
                return 0;
            }
            variance += floor / own / 2 / sweep.values(i);
        }
        return 1 / variance;
    }

    int size() {
        return phase.length;
    }

    /** Angular frequency in the recording. */
    double radiansPerS(int i) {
        return radiansPerS[i];
    }

    /** Radians, positive if right is late. */
    double phase(int i) {
        return phase[i];
    }

    /** One over the variance of the phase. */
    double weight(int i) {
        return weight[i];
    }

    /**
     * Right less left over the frequency of the programme, or null if nothing is told.
     *
     * @param speedRatio frequency in the recording over that in the programme
     */
    PairPhaseCurve difference(double speedRatio) {
        int points = size() / TOGETHER;
        double[] hz = new double[points];
        double[] degrees = new double[points];
        double[] uncertainty = new double[points];
        for (int n = 0; n < points; n++) {
            double weights = 0;
            for (int i = n * TOGETHER; i < (n + 1) * TOGETHER; i++) {
                hz[n] += weight[i] * radiansPerS[i] / (2 * Math.PI * speedRatio);
                degrees[n] -= Math.toDegrees(weight[i] * phase[i]);
                weights += weight[i];
            }
            hz[n] /= weights;
            degrees[n] /= weights;
            uncertainty[n] = Math.toDegrees(2 / Math.sqrt(weights));
        }
        return points == 0 ? null : new PairPhaseCurve(hz, degrees, uncertainty);
    }

    /** The same with all phases turned. */
    PhaseBands turnedBy(double radians) {
        double[] turned = Arrays.stream(phase).map(p -> p + radians).toArray();
        return new PhaseBands(radiansPerS, turned, weight, responsePhase);
    }

    /** The same less the phase that amplifiers with these responses have. */
    PhaseBands withoutResponses() {
        double[] less = phase.clone();
        for (int i = 0; i < less.length; i++) {
            less[i] -= responsePhase[i];
        }
        return new PhaseBands(radiansPerS, less, weight, responsePhase);
    }
}
