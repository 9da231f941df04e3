package offtape.core.model;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A sound through emphasis, curve and the inverse of the emphasis, stretch by stretch. The curve
 * runs at a multiple of the sample rate, 350 kHz or more, so that its harmonics do not fold back;
 * emphasis is applied to spectra and so follows its law up to half the rate. No delay.
 */
public final class BentSound implements AudioSource {

    private static final int TRANSFORM = 8192;
    private static final int REACH = 512;
    private static final double BASE_RATE_HZ = 48_000;
    private static final double CURVE_RATE_HZ = 350_000;
    private static final int MOST_FACTOR = 32;

    /** The last part of the band is taken off softly, so that nothing rings across a stretch. */
    private static final double PASS = 0.475;

    private final AudioSource sound;
    private final List<CurveTable> curves;
    private final List<double[][][]> emphases;
    private final double unitsPerFullScale;
    private final int window;
    private final int reach;
    private final int factor;
    private final RealFft narrow;
    private final RealFft wide;

    /**
     * A bent sound.
     *
     * @param sound one channel or as many as there are curves
     * @param curves one a channel
     * @param emphases one a channel
     * @param unitsPerFullScale what a sample of 1 is in units of the reference's peak at the curve;
     *     taken back behind it
     */
    public BentSound(
            AudioSource sound,
            List<TapeCurve> curves,
            List<Emphasis> emphases,
            double unitsPerFullScale) {
        this.sound = sound;
        this.curves = curves.stream().map(CurveTable::new).toList();
        this.unitsPerFullScale = unitsPerFullScale;
        int scale = scale(sound.sampleRateHz());
        this.window = scale * TRANSFORM;
        this.reach = scale * REACH;
        this.factor = factor(sound.sampleRateHz());
        this.narrow = RealFft.ofSize(window);
        this.wide = RealFft.ofSize(factor * window);
        this.emphases =
                emphases.stream().map(e -> new double[][][] {gains(e, 1), gains(e, -1)}).toList();
    }

    private static int scale(double rateHz) {
        int scale = 1;
        while (scale * BASE_RATE_HZ < 0.99 * rateHz) {
            scale *= 2;
        }
        return scale;
    }

    private static int factor(double rateHz) {
        int factor = 2;
        while (factor * rateHz < CURVE_RATE_HZ && factor < MOST_FACTOR) {
            factor *= 2;
        }
        return factor;
    }

    @Override
    public int sampleRateHz() {
        return sound.sampleRateHz();
    }

    @Override
    public int channels() {
        return curves.size();
    }

    @Override
    public long frames() {
        return sound.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels()][count];
        int hop = window - 2 * reach;
        for (int done = 0; done < count; done += hop) {
            double[][] x = sound.read(startFrame + done - reach, window);
            int some = Math.min(hop, count - done);
            for (int c = 0; c < out.length; c++) {
                double[] y = bent(x[Math.min(c, x.length - 1)], c);
                System.arraycopy(y, reach, out[c], done, some);
            }
        }
        return out;
    }

    private double[] bent(double[] x, int channel) {
        CurveTable curve = curves.get(channel);
        if (curve.isStraight()) {
            return x;
        }
        double[][][] gains = emphases.get(channel);
        double[] y = wide.inverse(filtered(narrow.forward(x), gains[0], wide.size(), factor));
        for (int i = 0; i < y.length; i++) {
            y[i] = curve.of(unitsPerFullScale * y[i]) / unitsPerFullScale;
        }
        return narrow.inverse(filtered(wide.forward(y), gains[1], narrow.size(), 1.0 / factor));
    }

    /** Bin by bin times a complex gain, onto a transform of another length. */
    private static Spectrum filtered(Spectrum from, double[][] gain, int samples, double scale) {
        double[] re = new double[samples / 2 + 1];
        double[] im = new double[re.length];
        for (int k = 0; k < gain[0].length; k++) {
            double cos = scale * gain[0][k];
            double sin = scale * gain[1][k];
            re[k] = from.re(k) * cos - from.im(k) * sin;
            im[k] = from.re(k) * sin + from.im(k) * cos;
        }
        return Spectrum.of(samples, re, im);
    }

    private double[][] gains(Emphasis emphasis, int sign) {
        double[][] gains = new double[2][window / 2];
        for (int k = 0; k < window / 2; k++) {
            double hz = k * (double) sampleRateHz() / window;
            double gain = edge(hz) * Math.pow(emphasis.gain(hz), sign);
            double phase = sign * emphasis.phase(hz);
            gains[0][k] = gain * Math.cos(phase);
            gains[1][k] = gain * Math.sin(phase);
        }
        return gains;
    }

    private double edge(double hz) {
        double place = (hz / sampleRateHz() - PASS) / (0.5 - PASS);
        return place <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, place));
    }

    @Override
    public String name() {
        return sound.name();
    }

    @Override
    public void close() {
        sound.close();
    }
}
