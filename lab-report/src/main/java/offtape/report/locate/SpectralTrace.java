package offtape.report.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.HannWindow;
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

    /** So many vectors are read from the source at once. */
    private static final int READ = 64;

    private final int bandCount;

    /** One vector after the other. */
    private final float[] values;

    private final float[] power;
    private final double hopSeconds;

    private SpectralTrace(int bandCount, float[] values, float[] power, double hopSeconds) {
        this.bandCount = bandCount;
        this.values = values;
        this.power = power;
        this.hopSeconds = hopSeconds;
    }

    /** The trace of a recording, all channels added in power. */
    static SpectralTrace of(AudioSource source) {
        int rate = source.sampleRateHz();
        int n = RealFft.nextPowerOfTwo((int) (0.04 * rate));
        int hops = (int) (source.frames() / (HOP_S * rate)) + 1;
        BandShape shape = new BandShape(n, rate);
        int count = shape.count();
        float[] values = new float[hops * count];
        float[] power = new float[hops];
        Windowed windowed = new Windowed(RealFft.ofSize(n), HannWindow.of(n));
        for (int from = 0; from < hops; from += READ) {
            int to = Math.min(hops, from + READ);
            long first = start(from, rate, n);
            double[][] x = source.read(first, (int) (start(to - 1, rate, n) - first) + n);
            for (int h = from; h < to; h++) {
                double[] sums = new double[count];
                windowed.spectra(x, (int) (start(h, rate, n) - first))
                        .forEach(spectrum -> shape.add(spectrum, sums));
                double all = Arrays.stream(sums).sum();
                power[h] = (float) all;
                for (int b = 0; b < count && all > 0; b++) {
                    values[h * count + b] = (float) Math.sqrt(sums[b] / all);
                }
            }
        }
        return new SpectralTrace(count, values, power, HOP_S);
    }

    private static long start(int hop, int rate, int n) {
        return Math.round(hop * HOP_S * rate) - n / 2;
    }

    /** Transforms of one length, of sound under a window. */
    private record Windowed(RealFft fft, double[] window) {

        /** The spectra of all channels at a place; silent ones are left out. */
        List<Spectrum> spectra(double[][] x, int from) {
            List<Spectrum> found = new ArrayList<>();
            double[] before = null;
            for (double[] channel : x) {
                double[] part = Arrays.copyOfRange(channel, from, from + window.length);
                // Programmes mostly hold the same in all channels, or nothing.
                if (before != null && Arrays.equals(part, before)) {
                    if (!found.isEmpty()) {
                        found.add(found.get(found.size() - 1));
                    }
                } else if (!silent(part)) {
                    found.add(fft.forward(HannWindow.applied(window, part, 0)));
                }
                before = part;
            }
            return found;
        }

        private static boolean silent(double[] part) {
            for (double v : part) {
                if (v != 0) {
                    return false;
                }
            }
            return true;
        }
    }

    /** Number of vectors. */
    int hops() {
        return power.length;
    }

    /** Number of bands. */
    int bandCount() {
        return bandCount;
    }

    /** Time between vectors, seconds. */
    double hopSeconds() {
        return hopSeconds;
    }

    /** One band over time. */
    double[] band(int b) {
        double[] out = new double[hops()];
        for (int h = 0; h < out.length; h++) {
            out[h] = values[h * bandCount + b];
        }
        return out;
    }

    /** The same sound in fewer vectors, each the direction of the mean of as many as named. */
    SpectralTrace coarser(int factor) {
        int length = (hops() + factor - 1) / factor;
        float[] out = new float[length * bandCount];
        float[] sums = new float[length];
        for (int h = 0; h < length; h++) {
            int to = Math.min(hops(), (h + 1) * factor);
            for (int i = h * factor; i < to; i++) {
                sums[h] += power[i];
                for (int b = 0; b < bandCount; b++) {
                    out[h * bandCount + b] += values[i * bandCount + b];
                }
            }
            double squares = 0;
            for (int at = h * bandCount; at < (h + 1) * bandCount; at++) {
                squares += (double) out[at] * out[at];
            }
            for (int at = h * bandCount; at < (h + 1) * bandCount && squares > 0; at++) {
                out[at] /= (float) Math.sqrt(squares);
            }
        }
        return new SpectralTrace(bandCount, out, sums, factor * hopSeconds);
    }

    /** The same sound without its silent parts: their vectors become zero. */
    SpectralTrace withoutSilence() {
        double loudest = 0;
        for (float p : power) {
            loudest = Math.max(loudest, p);
        }
        double least = loudest * Math.pow(10, -SILENCE_DB / 10);
        float[] kept = values.clone();
        for (int h = 0; h < power.length; h++) {
            if (power[h] <= least) {
                Arrays.fill(kept, h * bandCount, (h + 1) * bandCount, 0);
            }
        }
        return new SpectralTrace(bandCount, kept, power, hopSeconds);
    }

    /** The same sound from its end to its beginning. */
    SpectralTrace backwards() {
        float[] out = new float[values.length];
        float[] turned = new float[power.length];
        for (int h = 0; h < power.length; h++) {
            int from = power.length - 1 - h;
            turned[h] = power[from];
            System.arraycopy(values, from * bandCount, out, h * bandCount, bandCount);
        }
        return new SpectralTrace(bandCount, out, turned, hopSeconds);
    }

    /** The first so many vectors. */
    SpectralTrace beginning(int count) {
        return new SpectralTrace(
                bandCount,
                Arrays.copyOf(values, count * bandCount),
                Arrays.copyOf(power, count),
                hopSeconds);
    }

    /** The same sound stretched in time by a factor and, as tape does, lowered by it in pitch. */
    SpectralTrace stretched(double factor) {
        double shift = BANDS_PER_OCTAVE * Math.log(factor) / Math.log(2);
        int length = (int) Math.ceil(hops() * factor);
        float[] out = new float[length * bandCount];
        for (int h = 0; h < length; h++) {
            int from = Math.min(hops() - 1, (int) Math.rint(h / factor));
            for (int b = 0; b < bandCount; b++) {
                int lower = (int) Math.floor(b + shift);
                float part = (float) (b + shift - lower);
                float low = value(lower, from);
                float high = value(lower + 1, from);
                out[h * bandCount + b] =
                        (float) Math.sqrt((1 - part) * low * low + part * high * high);
            }
        }
        return new SpectralTrace(bandCount, out, new float[length], hopSeconds);
    }

    private float value(int b, int h) {
        return b < 0 || b >= bandCount ? 0 : values[h * bandCount + b];
    }

    /** Whether a vector is not zero. */
    boolean sounds(int hop) {
        for (int at = hop * bandCount; at < (hop + 1) * bandCount; at++) {
            if (values[at] > 0) {
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
        int here = hop * bandCount;
        int there = otherHop * bandCount;
        for (int b = 0; b < bandCount; b++) {
            sum += values[here + b] * other.values[there + b];
        }
        return sum;
    }

    /** Which bands a bin of the transform belongs to, in triangles over the logarithm. */
    private static final class BandShape {
        private final int count;

        /** First bin above the middle of each band. */
        private final int[] starts;

        private final double[] upperShare;

        BandShape(int n, int rate) {
            double octaves = Math.log(HIGHEST_HZ / LOWEST_HZ) / Math.log(2);
            count = (int) Math.round(BANDS_PER_OCTAVE * octaves) + 1;
            starts = new int[count];
            upperShare = new double[n / 2 + 1];
            int reached = -1;
            int k = 0;
            for (; k <= n / 2; k++) {
                double hz = (double) k * rate / n;
                double place = BANDS_PER_OCTAVE * Math.log(hz / LOWEST_HZ) / Math.log(2);
                if (place >= count - 1) {
                    break;
                }
                while (place >= 0 && reached < (int) place) {
                    starts[++reached] = k;
                }
                upperShare[k] = place >= 0 ? place - (int) place : 0;
            }
            while (reached < count - 1) {
                starts[++reached] = k;
            }
        }

        int count() {
            return count;
        }

        void add(Spectrum spectrum, double[] sums) {
            for (int b = 0; b < count - 1; b++) {
                double lower = sums[b];
                double upper = sums[b + 1];
                for (int k = starts[b]; k < starts[b + 1]; k++) {
                    double p = spectrum.power(k);
                    lower += (1 - upperShare[k]) * p;
                    upper += upperShare[k] * p;
                }
                sums[b] = lower;
                sums[b + 1] = upper;
            }
        }
    }
}
