package offtape.report.measure.line;

import java.util.Arrays;
import offtape.core.dsp.RealFft;

/** The slow part of a deviation at a low rate, so that many bends can be tried. */
final class LowBand {

    /** Edges of the filter and the rate as multiples of the highest frequency of interest. */
    private static final double PASS = 2;

    private static final double STOP = 2.625;
    private static final double RATE = 6.25;

    private LowBand() {}

    /**
     * What lies below twice a frequency, untouched, at 6.25 samples a period of it or a few more.
     */
    static Stretch of(double[] modulation, double rateHz, double highestHz) {
        RealFft fft = RealFft.ofSize(RealFft.nextPowerOfTwo(2 * modulation.length));
        double binHz = rateHz / fft.size();
        // ten minutes are two million points, so neither spectrum is kept longer than needed
        double[] low = fft.inverse(fft.forward(modulation).times(k -> gain(k * binHz / highestHz)));
        int every = Math.max(1, (int) (rateHz / RATE / highestHz));
        int count = (modulation.length - 1) / every + 1;
        // the samples that are left lie about the same middle
        int first = (modulation.length - 1 - (count - 1) * every) / 2;
        double[] samples = new double[count];
        Arrays.setAll(samples, i -> low[first + i * every]);
        return new Stretch(samples, rateHz / every);
    }

    private static double gain(double of) {
        double x = (of - PASS) / (STOP - PASS);
        return x <= 0 ? 1 : x >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x);
    }
}
