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

    private final float[][] bands;
    private final float[] power;
    private final double hopSeconds;

    private SpectralTrace(float[][] bands, float[] power, double hopSeconds) {
        this.bands = bands;
        this.power = power;
        this.hopSeconds = hopSeconds;
    }

    /** The trace of a recording, all channels added in power. */
    static SpectralTrace of(AudioSource source) {
        int rate = source.sampleRateHz();
        int n = RealFft.nextPowerOfTwo((int) (0.04 * rate));
        int hops = (int) (source.frames() / (HOP_S * rate)) + 1;
        BandShape shape = new BandShape(n, rate);
        float[][] bands = new float[shape.count()][hops];
        float[] power = new float[hops];
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
            double all = Arrays.stream(sums).sum();
            power[h] = (float) all;
            for (int b = 0; b < sums.length && all > 0; b++) {
                bands[b][h] = (float) Math.sqrt(sums[b] / all);
            }
        }
        return new SpectralTrace(bands, power, HOP_S);
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

    /** Time between vectors, seconds. */
    double hopSeconds() {
        return hopSeconds;
    }

    /** One band over time. */
    double[] band(int b) {
        double[] out = new double[hops()];
        for (int h = 0; h < out.length; h++) {
            out[h] = bands[b][h];
        }
        return out;
    }

    /** The same sound in fewer vectors, each the direction of the mean of as many as named. */
    SpectralTrace coarser(int factor) {
        int length = (hops() + factor - 1) / factor;
        float[][] out = new float[bands.length][length];
        float[] sums = new float[length];
        for (int h = 0; h < length; h++) {
            int to = Math.min(hops(), (h + 1) * factor);
            double squares = 0;
            for (int b = 0; b < bands.length; b++) {
                for (int i = h * factor; i < to; i++) {
                    out[b][h] += bands[b][i];
                }
                squares += (double) out[b][h] * out[b][h];
            }
            for (int b = 0; b < bands.length && squares > 0; b++) {
                out[b][h] /= (float) Math.sqrt(squares);
            }
            for (int i = h * factor; i < to; i++) {
                sums[h] += power[i];
            }
        }
        return new SpectralTrace(out, sums, factor * hopSeconds);
    }

    /** The same sound without its silent parts: their vectors become zero. */
    SpectralTrace withoutSilence() {
        double loudest = 0;
        for (float p : power) {
            loudest = Math.max(loudest, p);
        }
        double least = loudest * Math.pow(10, -SILENCE_DB / 10);
        float[][] kept = new float[bands.length][];
        for (int b = 0; b < kept.length; b++) {
            kept[b] = bands[b].clone();
            for (int h = 0; h < power.length; h++) {
                if (power[h] <= least) {
                    kept[b][h] = 0;
                }
            }
        }
        return new SpectralTrace(kept, power, hopSeconds);
    }

    /** The first so many vectors. */
    SpectralTrace beginning(int count) {
        float[][] kept = new float[bands.length][];
        for (int b = 0; b < kept.length; b++) {
            kept[b] = Arrays.copyOf(bands[b], count);
        }
        return new SpectralTrace(kept, Arrays.copyOf(power, count), hopSeconds);
    }

    /** The same sound stretched in time by a factor and, as tape does, lowered by it in pitch. */
    SpectralTrace stretched(double factor) {
        double shift = BANDS_PER_OCTAVE * Math.log(factor) / Math.log(2);
        int length = (int) Math.ceil(hops() * factor);
        float[][] out = new float[bands.length][length];
        for (int b = 0; b < bands.length; b++) {
            int lower = (int) Math.floor(b + shift);
            float part = (float) (b + shift - lower);
            for (int h = 0; h < length; h++) {
                int from = Math.min(hops() - 1, (int) Math.rint(h / factor));
                float low = value(lower, from);
                float high = value(lower + 1, from);
                out[b][h] = (float) Math.sqrt((1 - part) * low * low + part * high * high);
            }
        }
        return new SpectralTrace(out, new float[length], hopSeconds);
    }

    private float value(int b, int h) {
        return b < 0 || b >= bands.length ? 0 : bands[b][h];
    }

    /** Whether a vector is not zero. */
    boolean sounds(int hop) {
        for (float[] band : bands) {
            if (band[hop] > 0) {
                return true;
            }
        }
        return false;
    }

    /** Number of vectors that are not zero, from one to another (exclusive). */
    int sounding(int from, int to) {
        int count = 0;
        for (int h = Math.max(0, from); h < Math.min(to, hops()); h++) {
            count += sounds(h) ? 1 : 0;
        }
        return count;
    }

    /** Cosine between a vector of this trace and one of another; 0 where there is none. */
    double likeness(int hop, SpectralTrace other, int otherHop) {
        if (hop < 0 || hop >= hops() || otherHop < 0 || otherHop >= other.hops()) {
            return 0;
        }
        double sum = 0;
        for (int b = 0; b < bands.length; b++) {
            sum += bands[b][hop] * other.bands[b][otherHop];
        }
        return sum;
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
