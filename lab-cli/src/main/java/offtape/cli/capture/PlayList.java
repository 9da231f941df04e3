package offtape.cli.capture;

import offtape.cli.sound.LevelCeiling;
import offtape.core.audio.AudioSource;
import offtape.core.text.Sentences;

/**
 * What is played: silence, a sound, silence.
 *
 * @param sound one channel, which then goes to both, or two
 * @param gain factor on its samples
 * @param leadSeconds of silence before it
 * @param tailSeconds of silence after it, while which the last of it returns
 * @param ceiling what no sample may exceed
 */
public record PlayList(
        AudioSource sound,
        double gain,
        double leadSeconds,
        double tailSeconds,
        LevelCeiling ceiling) {

    private static final Sentences SAID = Sentences.near(PlayList.class);

    /** Frames of silence before the sound. */
    long leadFrames() {
        return Math.round(leadSeconds * sound.sampleRateHz());
    }

    /** Frames altogether. */
    public long frames() {
        return leadFrames() + sound.frames() + Math.round(tailSeconds * sound.sampleRateHz());
    }

    /**
     * One stretch, one array for each of that many channels.
     *
     * @throws offtape.cli.sound.TooLoudException if it is above the ceiling
     */
    double[][] read(long from, int count, int channels) {
        double[][] read = sound.read(from - leadFrames(), count);
        double peak = 0;
        double[][] block = new double[channels][];
        for (int c = 0; c < channels; c++) {
            double[] x = read[Math.min(c, read.length - 1)].clone();
            for (int i = 0; i < count; i++) {
                x[i] *= gain;
                peak = Math.max(peak, Math.abs(x[i]));
            }
            block[c] = x;
        }
        ceiling.check(peak, "\"" + sound.name() + "\"", SAID.say("allow-more"));
        return block;
    }
}
