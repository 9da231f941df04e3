package offtape.report.measure.sweep;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.programme.ExponentialSweep;

/**
 * The response from a deconvolved sweep, to be compared with the one that follows the sweep: the
 * return is convolved with the time-reversed sweep, its envelope falling by 6 dB an octave, and the
 * linear response is cut out of the result; the programme's own sweep is treated alike (A. Farina,
 * AES 108th Convention, 2000).
 */
final class PlainDeconvolution {

    private static final double HALF_WINDOW_S = 0.25;
    private static final double FLAT_SHARE = 0.6;

    private final ExponentialSweep sweep;
    private final int rate;
    private final RealFft fft;
    private final Spectrum inverse;
    private final int length;

    /**
     * @param sound the sweep as the programme has it, from its first to its last frame
     */
    PlainDeconvolution(ExponentialSweep sweep, int rate, double[] sound) {
        this.sweep = sweep;
        this.rate = rate;
        this.length = sound.length;
        this.fft = RealFft.ofSize(RealFft.nextPowerOfTwo(3 * length));
        double[] reversed = new double[length];
        for (int i = 0; i < length; i++) {
            double t = (double) i / rate;
            reversed[i] = sound[length - 1 - i] * Math.exp(-t / sweep.growthSeconds());
        }
        this.inverse = fft.forward(reversed);
    }

    /** The pulse response of a return that starts where the sweep starts, lag 0 in the middle. */
    double[] pulse(double[] returned) {
        return fft.inverse(fft.forward(returned).times(inverse));
    }

    /** Place of lag 0 in a pulse response. */
    int zero() {
        return length - 1;
    }

    /** Level of a return over the programme's sweep at each frequency, smoothed, re 1 kHz. */
    double[] levelDb(double[] returned, double[] sound, double[] hz) {
        Spectrum there = fft.forward(window(pulse(sound)));
        Spectrum back = fft.forward(window(pulse(returned)));
        int first = SweepFollower.band(sweep.startHz()) + 1;
        int bands = SweepFollower.band(sweep.endHz()) - first;
        double[] octaves = new double[bands];
        double[] db = new double[bands];
        for (int b = 0; b < bands; b++) {
            double middle = SweepFollower.bandHz(first + b);
            octaves[b] = Math.log(middle / 1000) / Math.log(2);
            db[b] = 10 * Math.log10(power(back, middle) / power(there, middle));
        }
        double zero = LocalFit.at(octaves, db, 0, 1.0 / 12).value();
        double[] result = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            double at = Math.log(hz[i] / 1000) / Math.log(2);
            result[i] = LocalFit.at(octaves, db, at, 1.0 / 12).value() - zero;
        }
        return result;
    }

    private double power(Spectrum s, double middleHz) {
        double half = Math.pow(2, 0.5 / SweepFollower.BANDS);
        double bin = s.binHz(rate);
        int from = (int) Math.round(middleHz / half / bin);
        int to = Math.max(from + 1, (int) Math.round(middleHz * half / bin));
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += s.power(k);
        }
        return sum / (to - from);
    }

    private double[] window(double[] pulse) {
        int half = (int) (HALF_WINDOW_S * rate);
        double[] cut = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            double outside = (Math.abs((double) i / half) - FLAT_SHARE) / (1 - FLAT_SHARE);
            double gain = outside <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * outside);
            cut[i + half] = gain * pulse[zero() + i];
        }
        return cut;
    }
}
