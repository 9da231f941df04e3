package offtape.report.measure.transport;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.SincInterpolator;
import offtape.core.dsp.Spectrum;
import offtape.report.measure.line.LineSearch;
import offtape.report.measure.speed.HeardDeviation;

/**
 * A motion made of sines and of Gaussian noise of a given density, and what a return off tape shows
 * of it: what is heard at the time t was written at the s for which the tape was at x(s) = x(t) −
 * d, so that r(t) = v(t)/v(s) − 1. Costs some milliseconds, so that hundreds can be tried.
 */
final class DrawnMotion {

    private static final double TONE_HZ = 3150;

    private final double rateHz;
    private final int before;

    /** Deviation, percent, and how far ahead of even motion the tape is, seconds. */
    private final double[] deviation;

    private final double[] ahead;
    private final Random random;

    /**
     * No motion yet.
     *
     * @param longestDelaySeconds how long before its beginning the motion must be known
     */
    DrawnMotion(double seconds, double rateHz, double longestDelaySeconds, long seed) {
        this.rateHz = rateHz;
        this.before = (int) Math.ceil((longestDelaySeconds + 0.2) * rateHz);
        this.deviation = new double[(int) Math.round(seconds * rateHz) + before + before];
        this.ahead = new double[deviation.length];
        this.random = new Random(seed);
    }

    DrawnMotion line(double hz, double peak) {
        double phase = 2 * Math.PI * random.nextDouble();
        double omega = 2 * Math.PI * hz;
        for (int i = 0; i < deviation.length; i++) {
            double turn = omega * i / rateHz + phase;
            deviation[i] += peak * Math.sin(turn);
            ahead[i] -= peak / 100 / omega * Math.cos(turn);
        }
        return this;
    }

    /** Noise of a one-sided density, squared percent a hertz, sharply limited in band. */
    DrawnMotion noise(DoubleUnaryOperator density) {
        int n = RealFft.nextPowerOfTwo(2 * deviation.length);
        double binHz = rateHz / n;
        double[][] parts = new double[4][n / 2 + 1];
        for (int k = 1; k < n / 2; k++) {
            double f = k * binHz;
            double size = n / 2.0 * Math.sqrt(density.applyAsDouble(f) * binHz);
            double omega = 2 * Math.PI * f;
            parts[0][k] = size * random.nextGaussian();
            parts[1][k] = size * random.nextGaussian();
            // divided by iω
            parts[2][k] = parts[1][k] / omega / 100;
            parts[3][k] = -parts[0][k] / omega / 100;
        }
        RealFft fft = RealFft.ofSize(n);
        add(deviation, fft.inverse(Spectrum.of(n, parts[0], parts[1])));
        add(ahead, fft.inverse(Spectrum.of(n, parts[2], parts[3])));
        return this;
    }

    private static void add(double[] x, double[] y) {
        Arrays.setAll(x, i -> x[i] + y[i]);
    }

    /** The transport's own deviation about its mean, percent. */
    double[] own() {
        return centred(Arrays.copyOfRange(deviation, before, deviation.length - before));
    }

    /**
     * What a return shows of it.
     *
     * @param delaySeconds distance of the heads over the mean speed
     * @param hiss density of the noise of the tone's phase, rad²/Hz
     */
    HeardDeviation heard(double delaySeconds, double hiss) {
        HeardDeviation heard = heardWithoutLines(delaySeconds, hiss);
        return new HeardDeviation(
                heard.percent(),
                rateHz,
                heard.bandHz(),
                heard.noiseDensity(),
                LineSearch.find(heard.percent(), rateHz).stream().limit(12).toList());
    }

    /** The same, with no line looked for. */
    HeardDeviation heardWithoutLines(double delaySeconds, double hiss) {
        DoubleUnaryOperator noise = f -> hiss * Math.pow(100 * f / TONE_HZ, 2);
        int n = deviation.length - 2 * before;
        double[] added =
                new DrawnMotion(n / rateHz, rateHz, 0, random.nextLong()).noise(noise).deviation;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            int now = before + i;
            double written = now - delaySeconds * rateHz;
            for (int step = 0; step < 4; step++) {
                double lead = ahead[now] - SincInterpolator.at(ahead, written);
                written = now - (delaySeconds - lead) * rateHz;
            }
            double then = SincInterpolator.at(deviation, written);
            x[i] = 100 * ((1 + deviation[now] / 100) / (1 + then / 100) - 1) + added[i];
        }
        centred(x);
        return new HeardDeviation(x, rateHz, Math.min(250, 0.45 * rateHz), noise, List.of());
    }

    private static double[] centred(double[] x) {
        double mean = Arrays.stream(x).average().orElseThrow();
        Arrays.setAll(x, i -> x[i] - mean);
        return x;
    }
}
