package offtape.cli.transfer;

import offtape.core.audio.AudioSource;
import offtape.core.unit.Decibels;

/**
 * How loud a sound is.
 *
 * @param peak highest magnitude, full-scale units
 * @param rms root of the mean square over all channels, full-scale units
 */
public record SoundLevels(double peak, double rms) {

    private static final int BLOCK = 1 << 14;

    /** Of a whole sound, read in stretches. */
    static SoundLevels of(AudioSource sound) {
        double peak = 0;
        double squares = 0;
        for (long at = 0; at < sound.frames(); at += BLOCK) {
            int count = (int) Math.min(BLOCK, sound.frames() - at);
            for (double[] x : sound.read(at, count)) {
                for (double v : x) {
                    peak = Math.max(peak, Math.abs(v));
                    squares += v * v;
                }
            }
        }
        double samples = Math.max(1, (double) sound.frames() * sound.channels());
        return new SoundLevels(peak, Math.sqrt(squares / samples));
    }

    /** Peak in dB re full scale, or null of silence. */
    Double peakDbfs() {
        return peak > 0 ? Decibels.ofAmplitude(peak) : null;
    }

    /** Rms in dB re a full-scale sine, or null of silence. */
    Double rmsDbfs() {
        return rms > 0 ? Decibels.ofAmplitude(rms * Math.sqrt(2)) : null;
    }
}
