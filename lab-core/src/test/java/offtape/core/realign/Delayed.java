package offtape.core.realign;

import java.util.Arrays;
import java.util.Random;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Sound sent over a path that only delays it, by any fraction of a frame, through its spectrum. */
final class Delayed {

    private static final double FULL_24_BITS = 8_388_608;

    private Delayed() {}

    /**
     * A return of 24 bits.
     *
     * @param delay frames; below 0 the recording began later than the sound
     * @param hissDb noise re the sound's rms, dB; below −200 none
     */
    static MemoryAudio by(AudioSource sound, double delay, double gain, double hissDb) {
        int frames = (int) sound.frames();
        double[][] x = sound.read(0, frames);
        int length = frames + (int) Math.max(0, delay) + 20_000;
        Random random = new Random(5);
        double[][] y = new double[x.length][];
        for (int c = 0; c < x.length; c++) {
            double[] late = late(x[c], delay, length);
            double hiss = hissDb < -200 ? 0 : rms(x[c]) * Math.pow(10, hissDb / 20);
            for (int i = 0; i < length; i++) {
                double v = gain * (late[i] + hiss * random.nextGaussian());
                late[i] = Math.rint(v * FULL_24_BITS) / FULL_24_BITS;
            }
            y[c] = late;
        }
        return new MemoryAudio("return", sound.sampleRateHz(), y);
    }

    private static double rms(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v * v;
        }
        return Math.sqrt(sum / x.length);
    }

    private static double[] late(double[] x, double delay, int length) {
        int whole = (int) Math.floor(delay);
        RealFft fft = RealFft.ofSize(RealFft.nextPowerOfTwo(length + 20_000));
        double[] placed = new double[fft.size()];
        for (int i = Math.max(0, -whole); i < x.length; i++) {
            placed[i + whole] = x[i];
        }
        Spectrum s = fft.forward(placed);
        double[] re = new double[s.bins()];
        double[] im = new double[s.bins()];
        for (int k = 0; k < s.bins(); k++) {
            double turn = -2 * Math.PI * k * (delay - whole) / fft.size();
            re[k] = s.re(k) * Math.cos(turn) - s.im(k) * Math.sin(turn);
            im[k] = s.re(k) * Math.sin(turn) + s.im(k) * Math.cos(turn);
        }
        double[] all = fft.inverse(Spectrum.of(fft.size(), re, im));
        return Arrays.copyOf(all, length);
    }
}
