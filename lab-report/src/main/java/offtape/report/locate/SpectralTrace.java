package offtape.report.locate;

import java.util.Arrays;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * The changing colour of a sound: for every 20 ms the shares of third-octave-wide, overlapping
 * bands as a vector of length 1. It knows neither level nor phase, so it survives saturation,
 * losses and wow, and a programme can be recognised by it whatever its parts are.
 */
final class SpectralTrace {

    /** Time between vectors, seconds. */
    static final double HOP_S = 0.02;

    private static final double LOWEST_HZ = 80;
    private static final double HIGHEST_HZ = 16_000;
    private static final double BANDS_PER_OCTAVE = 3;

    /** Parts this far under the loudest part of a programme count as silence, dB. */
    private static final double SILENCE_DB = 75;

    private final double[][] bands;
    private final double[] power;

    private SpectralTrace(double[][] bands, double[] power) {
        this.bands = bands;
        this.power = power;
    }

    /** The trace of a recording, all channels added in power. */
    static SpectralTrace of(AudioSource source) {
        int rate = source.sampleRateHz();
        int n = RealFft.nextPowerOfTwo((int) (0.04 * rate));
        int hops = (int) (source.frames() / (HOP_S * rate)) + 1;
        BandShape shape = new BandShape(n, rate);
        double[][] bands = new double[shape.count()][hops];
        double[] power = new double[hops];
        double[] window = hann(n);
        RealFft fft = RealFft.ofSize(n);
        for (int h = 0; h < hops; h++) {
            double[] sums = new double[shape.count()];
            for (double[] x : source.read(Math.round(h * HOP_S * rate) - n / 2, n)) {
                for (int i = 0; i < n; i++) {
                    x[i] *= window[i];
                }
                shape.add(fft.forward(x), sums);
            }
            power[h] = Arrays.stream(sums).sum();
            for (int b = 0; b < sums.length && power[h] > 0; b++) {
                bands[b][h] = Math.sqrt(sums[b] / power[h]);
            }
        }
        return new SpectralTrace(bands, power);
    }

    private static double[] hann(int n) {
        double[] w = new double[n];
        for (int i = 0; i < n; i++) {
            w[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n);
        }
        return w;
    }

    /** Number of vectors. */
    int hops() {
        return power.length;
    }

    /** Number of bands. */
    int bandCount() {
        return bands.length;
    }

    /** One band over time; not to be modified. */
    double[] band(int b) {
        return bands[b];
    }

    /** The same sound without its silent parts: their vectors become zero. */
    SpectralTrace withoutSilence() {
        double loudest = Arrays.stream(power).max().orElse(0);
        double least = loudest * Math.pow(10, -SILENCE_DB / 10);
        double[][] kept = new double[bands.length][];
        for (int b = 0; b < kept.length; b++) {
            kept[b] = bands[b].clone();
            for (int h = 0; h < power.length; h++) {
                if (power[h] <= least) {
                    kept[b][h] = 0;
                }
            }
        }
        return new SpectralTrace(kept, power);
    }

    /** The same sound stretched in time by a factor and, as tape does, lowered by it in pitch. */
    SpectralTrace stretched(double factor) {
        double shift = BANDS_PER_OCTAVE * Math.log(factor) / Math.log(2);
        int length = (int) Math.ceil(hops() * factor);
        double[][] out = new double[bands.length][length];
        for (int b = 0; b < bands.length; b++) {
            for (int h = 0; h < length; h++) {
                out[b][h] = between(b + shift, h / factor);
            }
        }
        return new SpectralTrace(out, new double[length]);
    }

    private double between(double band, double hop) {
        int b = (int) Math.floor(band);
        double part = band - b;
        int h = Math.min(hops() - 1, (int) Math.rint(hop));
        return (1 - part) * value(b, h) + part * value(b + 1, h);
    }

    private double value(int b, int h) {
        return b < 0 || b >= bands.length ? 0 : bands[b][h];
    }

    /** Number of vectors that are not zero, from one to another (exclusive). */
    int sounding(int from, int to) {
        int count = 0;
        for (int h = Math.max(0, from); h < Math.min(to, hops()); h++) {
            double sum = 0;
            for (double[] band : bands) {
                sum += band[h];
            }
            count += sum > 0 ? 1 : 0;
        }
        return count;
    }

    /** Which bands a bin of the transform belongs to, in triangles over the logarithm. */
    private static final class BandShape {
        private final int count;
        private final int[] lower;
        private final double[] upperShare;

        BandShape(int n, int rate) {
            double octaves = Math.log(HIGHEST_HZ / LOWEST_HZ) / Math.log(2);
            count = (int) Math.round(BANDS_PER_OCTAVE * octaves) + 1;
            lower = new int[n / 2 + 1];
            upperShare = new double[n / 2 + 1];
            for (int k = 0; k <= n / 2; k++) {
                double hz = (double) k * rate / n;
                double place = BANDS_PER_OCTAVE * Math.log(hz / LOWEST_HZ) / Math.log(2);
                boolean inside = place >= 0 && place < count - 1;
                lower[k] = inside ? (int) place : -1;
                upperShare[k] = inside ? place - lower[k] : 0;
            }
        }

        int count() {
            return count;
        }

        void add(Spectrum spectrum, double[] sums) {
            for (int k = 0; k < spectrum.bins(); k++) {
                if (lower[k] >= 0) {
                    double p = spectrum.power(k);
                    sums[lower[k]] += (1 - upperShare[k]) * p;
                    sums[lower[k] + 1] += upperShare[k] * p;
                }
            }
        }
    }
}
