package offtape.report.measure.pass;

import java.util.Arrays;
import java.util.Random;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.FlutterBand;

/** Random deviations whose power in a band is computed apart from what is tested. */
final class Wavering {

    static final double RATE_HZ = 500;

    private Wavering() {}

    /**
     * Gaussian noise from 0.3 to 80 Hz that falls with the rate, as flutter does.
     *
     * @param rms expected root mean square
     */
    static double[] random(Random random, double rms, int count) {
        int n = 2 * count;
        double[] re = new double[n / 2 + 1];
        double[] im = new double[n / 2 + 1];
        double sum = 0;
        for (int k = 1; k < re.length; k++) {
            double hz = k * RATE_HZ / n;
            if (hz > 0.3 && hz < 80) {
                double size = Math.pow(hz, -0.7);
                re[k] = size * random.nextGaussian();
                im[k] = size * random.nextGaussian();
                sum += 2 * size * size;
            }
        }
        double[] x = RealFft.ofSize(n).inverse(Spectrum.of(n, re, im));
        double scale = rms / Math.sqrt(2 * sum / ((double) n * n));
        return Arrays.stream(x, 0, count).map(v -> scale * v).toArray();
    }

    static void addLine(double[] x, double hz, double peak, double phase) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.cos(2 * Math.PI * hz * i / RATE_HZ + phase);
        }
    }

    /** Each replay about its mean: what it adds less what the tape holds. */
    static double[][] heard(double[] written, double[][] read) {
        double[][] out = new double[read.length][written.length];
        for (int p = 0; p < read.length; p++) {
            double[] own = read[p];
            Arrays.setAll(out[p], i -> own[i] - written[i]);
            double mean = Arrays.stream(out[p]).average().orElseThrow();
            Arrays.setAll(out[p], i -> own[i] - written[i] - mean);
        }
        return out;
    }

    /** Mean square in a band, by Parseval over the whole stretch. */
    static double power(double[] x, FlutterBand band) {
        return sum(powers(x), weights(band, x.length));
    }

    static double power(double[][] x, FlutterBand band) {
        return Arrays.stream(x).mapToDouble(one -> power(one, band)).average().orElseThrow();
    }

    /** Mean square of each bin. */
    static double[] powers(double[] x) {
        int n = x.length;
        Spectrum s = RealFft.ofSize(n).forward(x);
        double[] powers = new double[s.bins()];
        Arrays.setAll(powers, k -> 2 * s.power(k) / ((double) n * n));
        return powers;
    }

    /** By how much a band passes the power of each bin of so many values; nothing of the mean. */
    static double[] weights(FlutterBand band, int count) {
        double[] weights = new double[count / 2 + 1];
        for (int k = 1; k < weights.length; k++) {
            weights[k] = Math.pow(band.gain(k * RATE_HZ / count), 2);
        }
        return weights;
    }

    static double sum(double[] powers, double[] weights) {
        double sum = 0;
        for (int k = 0; k < powers.length; k++) {
            sum += weights[k] * powers[k];
        }
        return sum;
    }
}
