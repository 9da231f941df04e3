package offtape.cli.lineup;

import java.util.Arrays;
import java.util.Random;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Tones side by side over the band in which the delay between channels is looked for, with random
 * phases: it sounds like noise, repeats without a seam, and is the same each time.
 */
final class ManyTones {

    /** Lower end of the band. */
    static final double FROM_HZ = 500;

    /** Upper end of the band. */
    static final double TO_HZ = 12_000;

    private static final long SEED = 5;
    private static final double PERIOD_S = 0.17;

    private ManyTones() {}

    /** Samples of a stretch that the band is looked at in, and of the table; a power of two. */
    static int period(int sampleRateHz) {
        return RealFft.nextPowerOfTwo((int) Math.ceil(PERIOD_S * sampleRateHz));
    }

    /** One period, peak 1. */
    static double[] table(int sampleRateHz) {
        int n = period(sampleRateHz);
        double[] re = new double[n / 2 + 1];
        double[] im = new double[n / 2 + 1];
        Random random = new Random(SEED);
        for (int k = 1; k < n / 2; k++) {
            double hz = (double) k * sampleRateHz / n;
            if (hz >= FROM_HZ && hz <= TO_HZ) {
                // less of the highs, which saturate a slow tape first
                double size = 1 / Math.sqrt(hz);
                double phase = 2 * Math.PI * random.nextDouble();
                re[k] = size * Math.cos(phase);
                im[k] = size * Math.sin(phase);
            }
        }
        double[] x = RealFft.ofSize(n).inverse(Spectrum.of(n, re, im));
        double peak = Arrays.stream(x).map(Math::abs).max().orElseThrow();
        Arrays.setAll(x, i -> x[i] / peak);
        return x;
    }
}
