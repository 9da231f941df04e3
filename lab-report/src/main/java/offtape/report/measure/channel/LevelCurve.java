package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * The level of a steady tone over time. Only what lies close to the tone is kept; the modulus is
 * then smoothed by a raised cosine, which is never negative and so has no overshoot: an edge
 * becomes softer, but nothing gets deeper than it is.
 *
 * @param db level, decibels re full scale of the demodulated tone, evenly sampled
 * @param rateHz samples a second
 * @param firstSeconds time of the first sample in the recording
 */
record LevelCurve(double[] db, double rateHz, double firstSeconds) {

    private static final double RATE_HZ = 2500;
    private static final double WIDEST_PASS_HZ = 600;
    private static final double PASS_SHARE = 0.4;

    /** Keeps clear of the fades of a tone. */
    private static final double MARGIN_S = 0.05;

    /** Below this share of the usual level nothing is told apart: −80 dB. */
    private static final double FLOOR = 1e-4;

    /** A curve that scatters more than this is no tone but noise, dB. */
    private static final double STEADY_DB = 0.7;

    /** One curve a channel; none where the tone is not heard or drowns in noise. */
    static List<Optional<LevelCurve>> of(ProgrammeReturn ret, Cue.Tone tone) {
        double hz = tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames());
        double pass = Math.min(WIDEST_PASS_HZ, PASS_SHARE * hz);
        int rate = ret.recording().sampleRateHz();
        List<Optional<LevelCurve>> curves = new ArrayList<>();
        if (hz + 2 * pass > rate / 2.0) {
            for (int c = 0; c < ret.channels(); c++) {
                curves.add(Optional.empty());
            }
            return curves;
        }
        Downconverter converter = Downconverter.of(pass, 2 * pass, rate, RATE_HZ);
        ProgrammeReturn.Span span = ret.span(tone.startFrame(), tone.frames(), MARGIN_S);
        List<Baseband> bases =
                converter.convert(ret.recording(), span.from(), span.to(), PhaseLaw.steady(hz));
        for (Baseband base : bases) {
            // The first zero of the raised cosine lies on the edge of the filter, where it rings.
            curves.add(of(base, 4 / (3 * pass)));
        }
        return curves;
    }

    private static Optional<LevelCurve> of(Baseband base, double smoothSeconds) {
        double[] modulus = new double[base.size()];
        for (int k = 0; k < modulus.length; k++) {
            modulus[k] = Math.sqrt(base.power(k));
        }
        double usual = median(modulus);
        if (!(usual > 1e-7)) {
            return Optional.empty();
        }
        double[] smooth = smoothed(modulus, (int) Math.rint(smoothSeconds * base.rateHz()));
        double[] db = new double[smooth.length];
        for (int k = 0; k < db.length; k++) {
            db[k] = 20 * Math.log10(Math.max(smooth[k], FLOOR * usual));
        }
        LevelCurve curve = new LevelCurve(db, base.rateHz(), base.firstSeconds());
        return curve.unsteadinessDb() < STEADY_DB ? Optional.of(curve) : Optional.empty();
    }

    /** Time of a sample in the recording, seconds. */
    double seconds(double k) {
        return firstSeconds + k / rateHz;
    }

    /** Samples in so many seconds, at least 1. */
    int samples(double seconds) {
        return Math.max(1, (int) Math.rint(seconds * rateHz));
    }

    /** The usual difference of neighbouring stretches of 10 ms, dB: small for a tone. */
    private double unsteadinessDb() {
        int step = samples(0.01);
        double[] differences = new double[Math.max(1, db.length / step - 1)];
        for (int i = 0; i + 1 < db.length / step; i++) {
            differences[i] = Math.abs(db[(i + 1) * step] - db[i * step]);
        }
        return median(differences);
    }

    /** Mean over a raised cosine of so many samples across. */
    private static double[] smoothed(double[] x, int across) {
        int half = Math.max(1, across / 2);
        double[] weight = new double[2 * half - 1];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = 0.5 - 0.5 * Math.cos(Math.PI * (i + 1) / half);
        }
        double[] out = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            double sum = 0;
            double weights = 0;
            int from = Math.max(0, k - half + 1);
            int to = Math.min(x.length - 1, k + half - 1);
            for (int i = from; i <= to; i++) {
                sum += weight[i - k + half - 1] * x[i];
                weights += weight[i - k + half - 1];
            }
            out[k] = sum / weights;
        }
        return out;
    }

    private static double median(double[] x) {
        double[] sorted = x.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }
}
