package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.machine.spec.RandomBandSpec;
import offtape.core.random.NormalDraws;

/**
 * Speed noise of flat density within a band, made in the frequency domain over one period, so that
 * the band is sharp, the rms of a period exact, the join seamless, and the displacement, deviation
 * divided by jω, exact too.
 *
 * @param displacement displacement in seconds of nominal tape, one period
 * @param deviation its derivative, same length
 */
record BandNoise(double[] displacement, double[] deviation) {

    /**
     * One realisation.
     *
     * @param spec the band and its rms
     * @param seed chooses the realisation
     * @param rateHz values a second, at least twice the band's upper end
     * @param points length of the period, a power of two; the band must hold a multiple of
     *     rateHz/points
     */
    static BandNoise of(RandomBandSpec spec, long seed, double rateHz, int points) {
        int bins = points / 2 + 1;
        double[] re = new double[bins];
        double[] im = new double[bins];
        NormalDraws random = new NormalDraws(new SplittableRandom(seed));
        double binHz = rateHz / points;
        int first = Math.max(1, (int) Math.ceil(spec.lowHz() / binHz));
        int last = Math.min(bins - 2, Math.max(first, (int) Math.floor(spec.highHz() / binHz)));
        double power = 0;
        for (int k = first; k <= last; k++) {
            re[k] = random.next();
            im[k] = random.next();
            power += 2 * (re[k] * re[k] + im[k] * im[k]);
        }
        // Parseval: mean square = Σ|X|²/n² over all bins, each stored one standing for two.
        double scale = spec.rmsPercent() / 100 * points / Math.sqrt(power);
        for (int k = first; k <= last; k++) {
            re[k] *= scale;
            im[k] *= scale;
        }
        RealFft fft = RealFft.ofSize(points);
        double[] deviation = fft.inverse(Spectrum.of(points, re, im));
        integrate(re, im, 2 * Math.PI * binHz);
        return new BandNoise(fft.inverse(Spectrum.of(points, re, im)), deviation);
    }

    // Division by jω: (re + j·im)/(jω) = im/ω − j·re/ω.
    private static void integrate(double[] re, double[] im, double radiansPerBin) {
        for (int k = 1; k < re.length; k++) {
            double omega = radiansPerBin * k;
            double real = re[k];
            re[k] = im[k] / omega;
            im[k] = -real / omega;
        }
    }
}
