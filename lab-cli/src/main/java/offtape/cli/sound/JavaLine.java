package offtape.cli.sound;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;

/** Opens one direction of a device of Java's own sound layer. */
final class JavaLine {

    private JavaLine() {}

    /** Linear integers, little-endian. */
    static AudioFormat format(int rateHz, int bits, int channels) {
        return new AudioFormat(
                AudioFormat.Encoding.PCM_SIGNED,
                rateHz,
                bits,
                channels,
                channels * bits / 8,
                rateHz,
                false);
    }

    /**
     * A line of a device in a format, not yet open.
     *
     * @param mixer the device, or null for the system's own choice
     * @throws LineUnavailableException if the device is busy or has no such line
     */
    static <T extends Line> T line(Class<T> kind, Mixer.Info mixer, AudioFormat format)
            throws LineUnavailableException {
        DataLine.Info info = new DataLine.Info(kind, format);
        try {
            Line line =
                    mixer == null
                            ? AudioSystem.getLine(info)
                            : AudioSystem.getMixer(mixer).getLine(info);
            return kind.cast(line);
        } catch (IllegalArgumentException | SecurityException e) {
            // what is not there is told by this exception as well, depending on the system
            LineUnavailableException none = new LineUnavailableException(e.getMessage());
            none.initCause(e);
            throw none;
        }
    }
}
