package offtape.report.apply.model;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Power of a sound in a band, by the transform of all of it. */
final class Bands {

    private Bands() {}

    static double power(double[] x, double rateHz, double fromHz, double toHz) {
        Spectrum spectrum = RealFft.ofSize(x.length).forward(x);
        double binHz = rateHz / x.length;
        double sum = 0;
        for (int k = (int) Math.ceil(fromHz / binHz); k * binHz < toHz; k++) {
            sum += 2 * spectrum.power(k) / ((double) x.length * x.length);
        }
        return sum;
    }
}
