package offtape.cli.realign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Writes a sound that is computed while it is read, several stretches at once. */
final class SoundOutput {

    private static final Sentences SAID = Sentences.near(SoundOutput.class);

    private static final int BLOCK = 1 << 14;
    private static final int AT_ONCE = 8;

    private SoundOutput() {}

    /**
     * Writes it.
     *
     * @param encoding wished for
     * @param note what the file says of itself
     * @return the encoding used: float if there are peaks that the other does not hold
     */
    static WavEncoding write(
            AudioSource sound, Path file, WavEncoding encoding, BroadcastNote note) {
        if (isWritten(sound, file, encoding, note)) {
            return encoding;
        }
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("not-rewritten", file), e);
        }
        isWritten(sound, file, WavEncoding.FLOAT_32, note);
        return WavEncoding.FLOAT_32;
    }

    /** Whether all of it fitted; it is left where it does not. */
    private static boolean isWritten(
            AudioSource sound, Path file, WavEncoding encoding, BroadcastNote note) {
        WavFormat format = new WavFormat(sound.sampleRateHz(), sound.channels(), encoding);
        try (WavWriter wav = WavWriter.create(file, format, note)) {
            for (long at = 0; at < sound.frames(); at += (long) AT_ONCE * BLOCK) {
                for (double[][] block : blocks(sound, at)) {
                    if (!encoding.isFloating() && peak(block) > 1) {
                        return false;
                    }
                    wav.write(block);
                }
            }
        }
        return true;
    }

    private static List<double[][]> blocks(AudioSource sound, long first) {
        List<Long> starts =
                IntStream.range(0, AT_ONCE)
                        .mapToObj(n -> first + (long) n * BLOCK)
                        .filter(at -> at < sound.frames())
                        .toList();
        return Background.each(
                starts, at -> sound.read(at, (int) Math.min(BLOCK, sound.frames() - at)));
    }

    private static double peak(double[][] block) {
        double peak = 0;
        for (double[] channel : block) {
            for (double v : channel) {
                peak = Math.max(peak, Math.abs(v));
            }
        }
        return peak;
    }
}
