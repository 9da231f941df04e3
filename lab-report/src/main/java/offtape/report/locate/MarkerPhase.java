package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.ComplexFft;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.SincInterpolator;

/**
 * Follows the phase of a marker, whatever sound it is: programme and recording as analytic signals,
 * one times the other's conjugate. Since a marker passes through many frequencies, its phase tells
 * a delay from a turn of phase.
 */
final class MarkerPhase {

    private static final double BLOCK_S = 0.004;
    private static final double LOWEST_HZ = 200;
    private static final double HIGHEST_HZ = 9000;
    private static final int MARGIN = 256;

    /** Blocks that correlate less than this tell nothing. */
    private static final double CLEAR = 0.5;

    /** What filters and interpolation leave, radians. */
    private static final double OWN_ERROR = 0.003;

    private final AudioSource programme;
    private final AudioSource recording;
    private final TimeMap map;

    MarkerPhase(AudioSource programme, AudioSource recording, TimeMap map) {
        this.programme = programme;
        this.recording = recording;
        this.map = map;
    }

    /**
     * Readings of one channel.
     *
     * @param from start of the marker in the programme, seconds
     * @param seconds its length
     */
    List<PhaseReading> read(double from, double seconds, int channel, int group) {
        int rate = programme.sampleRateHz();
        long first = Math.round(from * rate);
        int count = (int) (seconds * rate);
        double[][] sent = programme.read(first - MARGIN, count + 2 * MARGIN);
        double[] own = analytic(sent[Math.min(channel, sent.length - 1)]);
        double[] back = analytic(returned(first - MARGIN, count + 2 * MARGIN, channel));
        int block = (int) (BLOCK_S * rate);
        List<PhaseReading> out = new ArrayList<>();
        double turns = Double.NaN;
        for (int k = MARGIN; k + block <= count + MARGIN; k += block) {
            Block b = Block.of(own, back, k, block, rate);
            if (b.hz() < LOWEST_HZ || b.hz() > HIGHEST_HZ || b.coherence() < CLEAR) {
                continue;
            }
            double phase = b.phase();
            if (!Double.isNaN(turns)) {
                phase -= 2 * Math.PI * Math.rint((phase - turns) / (2 * Math.PI));
            }
            turns = phase;
            double perSecond = 2 * Math.PI * b.hz();
            double middle = (first - MARGIN + k + b.centre()) / rate;
            out.add(
                    new PhaseReading(
                            middle,
                            -phase / perSecond,
                            b.hz(),
                            Math.hypot(b.sigma(), OWN_ERROR) / perSecond,
                            group));
        }
        return out;
    }

    /** The recording at the rate of the programme, where the map says each sample lies. */
    private double[] returned(long first, int count, int channel) {
        int rate = recording.sampleRateHz();
        double own = programme.sampleRateHz();
        long start = (long) Math.floor(map.recordingSeconds(first / own) * rate) - 64;
        double end = map.recordingSeconds((first + count) / own) * rate + 64;
        double[] x = recording.read(start, (int) (end - start) + 1)[channel];
        double[] out = new double[count];
        for (int i = 0; i < count; i++) {
            out[i] = SincInterpolator.at(x, map.recordingSeconds((first + i) / own) * rate - start);
        }
        return out;
    }

    /** Analytic signal, real and imaginary parts in turn. */
    private static double[] analytic(double[] x) {
        int n = RealFft.nextPowerOfTwo(x.length);
        double[] z = new double[2 * n];
        for (int i = 0; i < x.length; i++) {
            z[2 * i] = x[i];
        }
        ComplexFft fft = ComplexFft.ofSize(n);
        fft.forward(z);
        for (int k = 1; k < n; k++) {
            double gain = 2 * k == n ? 1 : k < n / 2 ? 2 : 0;
            z[2 * k] *= gain;
            z[2 * k + 1] *= gain;
        }
        fft.inverse(z);
        return z;
    }

    /**
     * A few milliseconds.
     *
     * @param centre sample around which the marker's power lies, from the block's start
     */
    private record Block(double phase, double hz, double coherence, double sigma, double centre) {

        static Block of(double[] own, double[] back, int from, int count, int rate) {
            double re = 0;
            double im = 0;
            double ownPower = 0;
            double backPower = 0;
            double turnRe = 0;
            double turnIm = 0;
            double moment = 0;
            for (int i = from; i < from + count; i++) {
                double a = own[2 * i];
                double b = own[2 * i + 1];
                double c = back[2 * i];
                double d = back[2 * i + 1];
                re += c * a + d * b;
                im += d * a - c * b;
                ownPower += a * a + b * b;
                backPower += c * c + d * d;
                moment += (i - from) * (a * a + b * b);
                turnRe += own[2 * i + 2] * a + own[2 * i + 3] * b;
                turnIm += own[2 * i + 3] * a - own[2 * i + 2] * b;
            }
            double both = ownPower * backPower;
            double coherence = both > 0 ? Math.hypot(re, im) / Math.sqrt(both) : 0;
            double noise = Math.max(0, 1 - coherence * coherence);
            return new Block(
                    Math.atan2(im, re),
                    Math.atan2(turnIm, turnRe) * rate / (2 * Math.PI),
                    coherence,
                    Math.sqrt(2 * noise / count) / coherence,
                    moment / ownPower);
        }
    }
}
