package offtape.report.measure.transport;

import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.report.measure.speed.HeardDeviation;

/**
 * The estimator that was not taken: the whole return is transformed, its ends turned over and faded
 * out, and divided by the comb as far as Wiener's filter allows. Steady lines may be undone one by
 * one before, as in the estimator that was taken.
 */
final class WienerInverse {

    private WienerInverse() {}

    static double[] undo(HeardDeviation heard, Comb comb, boolean linesFirst) {
        double[] y = heard.percent().clone();
        double rate = heard.rateHz();
        LineInverse inverse = new LineInverse(y, rate, comb, HeardLag.of(y, rate, comb.seconds()));
        List<UndoneLine> lines = inverse.undo(linesFirst ? heard.lines() : List.of());
        double[] own = inverse.own(lines);
        double[] of = inverse.heard(lines);
        Arrays.setAll(y, i -> y[i] - of[i]);
        // the level of motion between the zeros, from the return itself
        CombDoubt finite = new CombDoubt(comb, heard.seconds(), 0, f -> 1, f -> 0);
        RestDensity density =
                RestDensity.of(
                        y,
                        rate,
                        f -> comb.power(f) + finite.finite(),
                        f -> heard.noiseDensity().applyAsDouble(f));
        CombDoubt doubt =
                new CombDoubt(comb, heard.seconds(), 0, density::at, heard.noiseDensity());
        int n = y.length;
        int size = RealFft.nextPowerOfTwo(2 * n);
        int margin = (size - n) / 2;
        double[] longer = new double[size];
        System.arraycopy(y, 0, longer, margin, n);
        for (int i = 1; i <= Math.min(margin, n - 1); i++) {
            double fade = 0.5 + 0.5 * Math.cos(Math.PI * i / margin);
            longer[margin - i] = -fade * y[i];
            longer[margin + n - 1 + i] = -fade * y[n - 1 - i];
        }
        RealFft fft = RealFft.ofSize(size);
        Spectrum s = fft.forward(longer);
        double[] re = new double[s.bins()];
        double[] im = new double[s.bins()];
        for (int k = 1; k < re.length; k++) {
            double f = k * rate / size;
            double turn = 2 * Math.PI * f * comb.seconds();
            double scale = 1 / (comb.power(f) + doubt.all(f));
            // times the conjugate of 1 − exp(−i·turn)
            double a = scale * (1 - Math.cos(turn));
            double b = -scale * Math.sin(turn);
            re[k] = a * s.re(k) - b * s.im(k);
            im[k] = a * s.im(k) + b * s.re(k);
        }
        double[] x = fft.inverse(Spectrum.of(size, re, im));
        double[] rest = Arrays.copyOfRange(x, margin, margin + n);
        Arrays.setAll(rest, i -> rest[i] + own[i]);
        return rest;
    }
}
