package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The Java platform's own reader and writer as a general-purpose reference. */
class PlatformSoundTest {

    @TempDir Path dir;

    @ParameterizedTest
    @CsvSource({"WAVE, 16", "WAVE, 24", "AIFF, 8", "AIFF, 16", "AIFF, 24"})
    void whatThePlatformWritesIsRead(String kind, int bits) throws Exception {
        AudioFileFormat.Type type =
                kind.equals("WAVE") ? AudioFileFormat.Type.WAVE : AudioFileFormat.Type.AIFF;
        int step = bits / 8;
        byte[] raw = new byte[1000 * 2 * step];
        new Random(bits).nextBytes(raw);
        File file = dir.resolve("platform").toFile();
        AudioFormat format = new AudioFormat(44100, bits, 2, true, false);
        try (AudioInputStream in =
                new AudioInputStream(new ByteArrayInputStream(raw), format, 1000)) {
            AudioSystem.write(in, type, file);
        }
        try (AudioFile wav = AudioFiles.open(file.toPath())) {
            assertEquals(1000, wav.frames());
            double[][] read = wav.read(0, 1000);
            for (int i = 0; i < 2000; i++) {
                assertEquals(code(raw, i * step, step), read[i % 2][i / 2] * (1 << bits - 1), 0);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"PCM_16, 2", "PCM_24, 2", "PCM_24, 1", "FLOAT_32, 1"})
    void thePlatformReadsWhatIsWritten(WavEncoding encoding, int channels) throws Exception {
        double[][] sound = new double[channels][501];
        Random random = new Random(3);
        for (double[] channel : sound) {
            Arrays.setAll(channel, i -> random.nextInt(65536) / 32768.0 - 1);
        }
        Path file = dir.resolve("ours.wav");
        try (WavWriter writer = WavWriter.create(file, new WavFormat(48000, channels, encoding))) {
            writer.write(sound);
        }
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            AudioFormat format = in.getFormat();
            assertEquals(48000, format.getSampleRate());
            assertEquals(channels, format.getChannels());
            assertEquals(encoding.bits(), format.getSampleSizeInBits());
            assertEquals(501, in.getFrameLength());
            double[] back = decode(in.readAllBytes(), encoding);
            double[] expected = new double[back.length];
            Arrays.setAll(expected, i -> sound[i % channels][i / channels]);
            assertArrayEquals(expected, back, 0);
        }
    }

    private static double[] decode(byte[] raw, WavEncoding encoding) {
        int step = encoding.bits() / 8;
        double[] back = new double[raw.length / step];
        Arrays.setAll(
                back,
                i ->
                        encoding.isFloating()
                                ? Float.intBitsToFloat((int) code(raw, i * step, step))
                                : code(raw, i * step, step) / Math.pow(2, encoding.bits() - 1));
        return back;
    }

    private static long code(byte[] raw, int index, int step) {
        long code = raw[index + step - 1];
        for (int i = step - 2; i >= 0; i--) {
            code = code << 8 | raw[index + i] & 0xFF;
        }
        return code;
    }

    @Test
    void fullScaleIsNotOverflow() {
        Path file = dir.resolve("full.wav");
        try (WavWriter writer =
                WavWriter.createDithered(file, new WavFormat(48000, 1, WavEncoding.PCM_16), 9)) {
            double[] alternating = new double[1000];
            Arrays.setAll(alternating, i -> i % 2 == 0 ? 1 : -1);
            writer.write(new double[][] {alternating});
        }
        try (AudioFile wav = AudioFiles.open(file)) {
            double[] back = wav.read(0, 1000)[0];
            for (int i = 0; i < back.length; i++) {
                // dither of a step and rounding of half a step at most, never the other sign
                assertEquals(i % 2 == 0 ? 1 : -1, back[i], 1.5 / 32768);
            }
        }
    }
}
