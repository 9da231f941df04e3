package offtape.report.measure.noise;

import java.util.ArrayList;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.Iec61260;

/**
 * A stretch of sound in frames of some 90 ms under a Hann window, half over one another, as powers
 * of third-octave bands.
 */
final class ShortFrames {

    private static final double LONGEST_FRAME_S = 0.13;
    private static final double LOWEST_HZ = 200;
    private static final double HIGHEST_HZ = 12_500;

    /** Bands end at this share of the sample rate, where a recorder's own filter begins. */
    private static final double RATE_SHARE = 0.4;

    private static final int THIRDS = 3;

    private final int length;
    private final double binHz;
    private final double[][] powers;

    /** Transforms a stretch; there are no frames if it is shorter than one. */
    ShortFrames(double[] x, double rateHz) {
        this.length = Integer.highestOneBit((int) (LONGEST_FRAME_S * rateHz));
        this.binHz = rateHz / length;
        int frames = x.length < length ? 0 : 2 * (x.length - length) / length + 1;
        this.powers = new double[frames][];
        double[] window = new double[length];
        double windowPower = 0;
        for (int i = 0; i < length; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length);
            windowPower += window[i] * window[i];
        }
        RealFft fft = RealFft.ofSize(length);
        int bins = (int) Math.min(length / 2, Math.ceil(2 * HIGHEST_HZ / binHz));
        double[] piece = new double[length];
        for (int f = 0; f < frames; f++) {
            for (int i = 0; i < length; i++) {
                piece[i] = window[i] * x[f * (length / 2) + i];
            }
            Spectrum spectrum = fft.forward(piece);
            powers[f] = new double[bins];
            for (int k = 1; k < bins; k++) {
                powers[f][k] = 2 * spectrum.power(k) / (windowPower * length);
            }
        }
    }

    /** How many frames there are. */
    int count() {
        return powers.length;
    }

    /**
     * Bands of nominal 250 Hz to 10 kHz, or as far as the recording reaches, in order: those whose
     * exact centres lie between the bounds.
     */
    List<BandCourse> bands() {
        List<BandCourse> bands = new ArrayList<>();
        double top = Math.min(HIGHEST_HZ, RATE_SHARE * binHz * length);
        for (double centre : Iec61260.bandCentresHz(LOWEST_HZ, top, THIRDS)) {
            double from = Iec61260.lowerEdgeHz(centre, THIRDS);
            double to = Iec61260.upperEdgeHz(centre, THIRDS);
            bands.add(BandCourse.of(powers, binHz, from, to));
        }
        return bands;
    }

    /** Lower edge of the lowest band, Hz. */
    static double lowestHz() {
        return Iec61260.lowerEdgeHz(LOWEST_HZ, THIRDS);
    }

    /** Upper edge of the highest band at a sample rate, Hz. */
    static double highestHz(double rateHz) {
        return Math.min(Iec61260.upperEdgeHz(HIGHEST_HZ, THIRDS), RATE_SHARE * rateHz);
    }
}
