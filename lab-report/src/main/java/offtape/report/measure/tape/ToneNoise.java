package offtape.report.measure.tape;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.PowerDensity;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * The noise around a tone, from how its level trembles faster than tape fluctuates: flutter moves
 * the phase and leaves the level alone. The median of the lines counts, so hum does not.
 *
 * @param density power of the noise on each channel for each hertz about the tone, both sides, in
 *     squared modulus
 * @param bandHz width of the ideal band that lets as much noise through as the converter's
 * @param passHz half the width of the band that passes whole
 */
record ToneNoise(double[] density, double bandHz, double passHz) {

    private static final double LONGEST_S = 8;
    private static final double FROM_SHARE = 0.35;
    private static final int TRANSFORM = 1024;

    /** How far a dropout spreads through the filter, times its width. */
    private static final double SPREAD = 0.4;

    /** Reads the middle of a stretch in which the tone sounds, 8 s at most. */
    static ToneNoise of(AudioSource recording, double from, double to, double toneHz) {
        double middle = (from + to) / 2;
        double half = Math.min(LONGEST_S, to - from) / 2;
        Downconverter converter = ToneCells.converter(recording, toneHz);
        List<Baseband> bases =
                converter.convert(recording, middle - half, middle + half, PhaseLaw.steady(toneHz));
        double pass = ToneCells.band(recording, toneHz).passHz();
        double[] density = new double[bases.size()];
        Baseband loudest = Baseband.loudest(bases);
        Arrays.setAll(density, c -> density(along(bases.get(c), loudest), loudest.rateHz(), pass));
        return new ToneNoise(density, converter.noiseBandwidthHz(), pass);
    }

    /**
     * A channel in the direction in which its tone points, once the phase of the loudest channel is
     * taken out. Of a channel without a tone that is half its noise, as it is of one with a tone.
     */
    private static double[] along(Baseband base, Baseband loudest) {
        int n = base.size();
        double[] re = new double[n];
        double[] im = new double[n];
        double sumRe = 0;
        double sumIm = 0;
        for (int k = 0; k < n; k++) {
            double size = Math.sqrt(loudest.power(k)) + 1e-300;
            double cos = loudest.re()[k] / size;
            double sin = loudest.im()[k] / size;
            re[k] = base.re()[k] * cos + base.im()[k] * sin;
            im[k] = base.im()[k] * cos - base.re()[k] * sin;
            sumRe += re[k];
            sumIm += im[k];
        }
        double size = Math.hypot(sumRe, sumIm) + 1e-300;
        double cos = sumRe / size;
        double sin = sumIm / size;
        double[] along = new double[n];
        Arrays.setAll(along, k -> re[k] * cos + im[k] * sin);
        return along;
    }

    private static double density(double[] level, double rateHz, double pass) {
        double[] about = Dropouts.bridged(level, (int) Math.ceil(SPREAD * rateHz / pass));
        if (about.length < 16) {
            return 0;
        }
        PowerDensity density = PowerDensity.of(about, rateHz, TRANSFORM);
        int from = (int) Math.ceil(FROM_SHARE * pass / density.binHz());
        int to = Math.max(from + 1, (int) Math.floor(pass / density.binHz()));
        double[] lines = new double[to - from];
        Arrays.setAll(lines, k -> density.at(from + k));
        return Ranked.median(lines) / medianShare(density.pieces());
    }

    /**
     * The median of lines of noise as a share of their mean: ln 2 where they are powers of single
     * transforms, more where each is a mean over some (chi-squared, two degrees of freedom each;
     * that half of a piece is in the next one too hardly matters under a Hann window).
     */
    private static double medianShare(int pieces) {
        double freedom = 2.0 * pieces;
        return new ChiSquaredDistribution(freedom).inverseCumulativeProbability(0.5) / freedom;
    }

    /** Power that the noise adds to a channel. */
    double power(int channel) {
        return density[channel] * bandHz;
    }

    /** Its power once cells of a length are averaged. */
    double power(int channel, double cellSeconds) {
        return density[channel] * Math.min(bandHz, 1 / cellSeconds);
    }
}
