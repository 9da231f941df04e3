package offtape.cli.transfer;

import java.nio.file.Path;
import offtape.cli.capture.StopSignal;
import offtape.core.align.Alignment;
import offtape.core.align.StraightenedSound;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.unit.Decibels;

/**
 * The return of a stem, put straight and written as long as the stem is. What does not fit 24 bits
 * because the machine made its peaks higher is written as float, so that nothing is cut off.
 */
final class StemReturn {

    private static final int BLOCK = 1 << 14;

    private final StraightenedSound sound;
    private final SoundLevels levels;
    private final WavEncoding encoding;

    /**
     * A return.
     *
     * @param recording the channels on which the stem came back; closed by the caller
     */
    StemReturn(
            AudioSource recording, Alignment found, double driveDb, long frames, boolean isFloat) {
        this.sound = new StraightenedSound(recording, found, Decibels.toAmplitude(driveDb), frames);
        this.levels = SoundLevels.of(sound);
        this.encoding = isFloat || levels.peak() > 1 ? WavEncoding.FLOAT_32 : WavEncoding.PCM_24;
    }

    /** How loud it is. */
    SoundLevels levels() {
        return levels;
    }

    /** How it is written. */
    String encoding() {
        return encoding.isFloating() ? "float-32" : "pcm-24";
    }

    /** Whether it had to be written as float. */
    boolean isTooLoudFor24Bits() {
        return levels.peak() > 1;
    }

    /**
     * Writes it, unless somebody ends the run meanwhile.
     *
     * @param note what the file says of itself
     */
    void write(Path file, BroadcastNote note, StopSignal stop) {
        WavFormat format = new WavFormat(sound.sampleRateHz(), sound.channels(), encoding);
        try (WavWriter wav = WavWriter.create(file, format, note)) {
            for (long at = 0; at < sound.frames() && !stop.isGiven(); at += BLOCK) {
                wav.write(sound.read(at, (int) Math.min(BLOCK, sound.frames() - at)));
            }
        }
    }
}
