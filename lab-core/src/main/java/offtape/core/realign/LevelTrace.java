package offtape.core.realign;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.Background;

/**
 * How loud a sound is in a few bands, fifty times a second: all that is needed to find roughly
 * where one sound lies in another, whatever a machine does to level, phase and response. Fourth
 * roots of power, so that loud places do not drown the rest, less their mean over the second
 * around. Takes 1200 bytes a second of sound.
 */
final class LevelTrace {

    /** Values a second. */
    static final int RATE_HZ = 50;

    private static final double[] EDGES_HZ = {60, 150, 350, 800, 1800, 4000, 9000};
    private static final int BANDS = EDGES_HZ.length - 1;

    /** Length of the windows at least, seconds. */
    private static final double WINDOW_S = 0.035;

    private static final int BLOCK = 256;

    /** Values on each side of the one whose mean is taken off. */
    private static final int AROUND = RATE_HZ / 2;

    private final float[][] bands;

    private LevelTrace(float[][] bands) {
        this.bands = bands;
    }

    /** The trace of all channels of a sound together. */
    static LevelTrace of(AudioSource sound) {
        int rate = sound.sampleRateHz();
        int values = (int) (sound.frames() * RATE_HZ / rate) + 1;
        int window = RealFft.nextPowerOfTwo((int) Math.ceil(WINDOW_S * rate));
        RealFft fft = RealFft.ofSize(window);
        double[] shape = shape(window);
        float[][] raw = new float[BANDS][values];
        for (int from = 0; from < values; from += BLOCK) {
            int to = Math.min(values, from + BLOCK);
            long first = frame(from, rate) - window / 2;
            int length = (int) (frame(to, rate) - frame(from, rate)) + window;
            double[][] x = sound.read(first, length);
            long begin = frame(from, rate);
            Background.range(
                    from,
                    to,
                    i -> take(raw, i, x, (int) (frame(i, rate) - begin), fft, shape, rate));
        }
        return new LevelTrace(raised(raw));
    }

    private static double[] shape(int window) {
        double[] shape = new double[window];
        for (int i = 0; i < window; i++) {
            double s = Math.sin(Math.PI * (i + 0.5) / window);
            shape[i] = s * s;
        }
        return shape;
    }

    private static long frame(long value, int rate) {
        return value * rate / RATE_HZ;
    }

    private static void take(
            float[][] raw,
            int at,
            double[][] x,
            int offset,
            RealFft fft,
            double[] shape,
            int rate) {
        int n = fft.size();
        double[] power = new double[BANDS];
        for (double[] channel : x) {
            double[] part = new double[n];
            for (int i = 0; i < n; i++) {
                part[i] = shape[i] * channel[offset + i];
            }
            Spectrum spectrum = fft.forward(part);
            for (int b = 0; b < BANDS; b++) {
                int last = Math.min(spectrum.bins() - 1, (int) (EDGES_HZ[b + 1] * n / rate));
                for (int k = (int) (EDGES_HZ[b] * n / rate) + 1; k <= last; k++) {
                    power[b] += spectrum.power(k);
                }
            }
        }
        for (int b = 0; b < BANDS; b++) {
            raw[b][at] = (float) Math.sqrt(Math.sqrt(power[b] / n));
        }
    }

    private static float[][] raised(float[][] raw) {
        float[][] out = new float[raw.length][];
        for (int b = 0; b < raw.length; b++) {
            out[b] = raised(raw[b]);
        }
        return out;
    }

    private static float[] raised(float[] raw) {
        double[] sums = new double[raw.length + 1];
        for (int i = 0; i < raw.length; i++) {
            sums[i + 1] = sums[i] + raw[i];
        }
        float[] out = new float[raw.length];
        for (int i = 0; i < raw.length; i++) {
            int from = Math.max(0, i - AROUND);
            int to = Math.min(raw.length, i + AROUND + 1);
            out[i] = (float) (raw[i] - (sums[to] - sums[from]) / (to - from));
        }
        return out;
    }

    /** Largest value, about the rms there to the power of one half. */
    double loudest() {
        double most = 0;
        for (float[] band : bands) {
            for (float v : band) {
                most = Math.max(most, Math.abs(v));
            }
        }
        return most;
    }

    /** Number of values. */
    int length() {
        return bands[0].length;
    }

    /** Number of bands. */
    int bands() {
        return BANDS;
    }

    /** A value; 0 outside. */
    double at(int band, int index) {
        return index >= 0 && index < bands[band].length ? bands[band][index] : 0;
    }

    /** A value between two others; 0 outside. */
    double at(int band, double place) {
        int left = (int) Math.floor(place);
        double part = place - left;
        return at(band, left) + part * (at(band, left + 1) - at(band, left));
    }

    /** Sum of the squares over all bands from one value to before another. */
    double energy(int from, int to) {
        double sum = 0;
        for (int b = 0; b < BANDS; b++) {
            for (int i = Math.max(0, from); i < Math.min(length(), to); i++) {
                sum += bands[b][i] * bands[b][i];
            }
        }
        return sum;
    }

    /** A whole band of values that lie faster or slower, for transforms. */
    double[] stretched(int band, double from, int length, double step, int size) {
        double[] out = new double[size];
        for (int i = 0; i < length; i++) {
            out[i] = at(band, from + i * step);
        }
        return out;
    }
}
