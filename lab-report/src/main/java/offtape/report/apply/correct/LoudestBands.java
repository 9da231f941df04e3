package offtape.report.apply.correct;

import java.util.Arrays;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.Iec61260;
import offtape.core.unit.Decibels;

/**
 * The loudest tenth of a second of a sound in each third-octave band, as the level of a sine of
 * like power: dB re a full-scale sine. Stretches overlap by half under a window of raised cosine.
 */
final class LoudestBands {

    private static final double STRETCH_S = 0.1;
    private static final double LOWEST_HZ = 40;
    private static final double HIGHEST_HZ = 16_000;

    /** Highest band's edge re half the rate. */
    private static final double OF_HALF_RATE = 0.98;

    private static final double FLOOR_DB = -200;

    private final AudioSource sound;
    private final double[] middles;
    private final int frames;
    private final double[] window;
    private final RealFft transform;

    private LoudestBands(AudioSource sound) {
        this.sound = sound;
        frames = 2 * (int) Math.round(STRETCH_S * sound.sampleRateHz() / 2);
        transform = RealFft.ofSize(frames);
        window = new double[frames];
        Arrays.setAll(window, i -> 0.5 * (1 - Math.cos(2 * Math.PI * (i + 0.5) / frames)));
        middles = bands(sound.sampleRateHz());
    }

    /** Middles of the bands that are read at a sample rate. */
    static double[] bands(int sampleRateHz) {
        double edge = Iec61260.upperEdgeHz(1, 3);
        double top = Math.min(HIGHEST_HZ, OF_HALF_RATE * sampleRateHz / 2 / edge);
        return Iec61260.bandCentresHz(LOWEST_HZ, top, 3);
    }

    /** The levels, one array a channel. */
    static double[][] of(AudioSource sound) {
        return new LoudestBands(sound).levels();
    }

    private double[][] levels() {
        double[][] most = new double[sound.channels()][middles.length];
        for (long start = 0; start < sound.frames(); start += frames / 2) {
            double[][] x = sound.read(start, frames);
            for (int c = 0; c < x.length; c++) {
                keepLouder(most[c], x[c]);
            }
        }
        for (double[] channel : most) {
            Arrays.setAll(
                    channel,
                    b -> Math.max(FLOOR_DB, Decibels.ofPower(Math.max(1e-30, channel[b]))));
        }
        return most;
    }

    private void keepLouder(double[] most, double[] x) {
        double squares = 0;
        for (int i = 0; i < frames; i++) {
            squares += window[i] * window[i];
            x[i] *= window[i];
        }
        Spectrum spectrum = transform.forward(x);
        double binHz = spectrum.binHz(sound.sampleRateHz());
        for (int b = 0; b < most.length; b++) {
            int from = (int) Math.ceil(Iec61260.lowerEdgeHz(middles[b], 3) / binHz);
            int to = (int) Math.ceil(Iec61260.upperEdgeHz(middles[b], 3) / binHz);
            double power = 0;
            // a band in the bass is narrower than a bin is apart: the nearest stands for it
            for (int k = from; k < Math.max(to, from + 1); k++) {
                power += spectrum.power(k);
            }
            // twice for the conjugate bins, twice since a full-scale sine has a mean square of 1/2
            most[b] = Math.max(most[b], 4 * power / (squares * frames));
        }
    }
}
