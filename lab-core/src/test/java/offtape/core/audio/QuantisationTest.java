package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What writing and reading back does to the sound. */
class QuantisationTest {

    private static final int FRAMES = 400_000;

    @TempDir Path dir;

    private static double[] sine(double peak) {
        double[] sound = new double[FRAMES];
        // a fraction of the rate that never repeats, so that the error is spread evenly
        double step = 2 * Math.PI * (Math.sqrt(5) - 1) / 97;
        Arrays.setAll(sound, i -> peak * Math.sin(step * i));
        return sound;
    }

    private double[] throughFile(WavEncoding encoding, boolean dithered, double[] sound) {
        Path file = dir.resolve("a.wav");
        WavFormat format = new WavFormat(48000, 1, encoding);
        try (WavWriter writer =
                dithered
                        ? WavWriter.createDithered(file, format, 1)
                        : WavWriter.create(file, format)) {
            writer.write(new double[][] {sound});
        }
        try (AudioFile wav = AudioFiles.open(file)) {
            return wav.read(0, sound.length)[0];
        }
    }

    /**
     * Signal to quantisation noise of a full-scale sine: 6.02 N + 1.76 dB (step q: noise power
     * q²/12), and 4.77 dB less with triangular dither (q²/12 + q²/6 = three times the power).
     * Textbook figures, from memory, and derived here from the powers: 10 lg(3/2 · 4^N) and 10
     * lg(1/2 · 4^N). The estimate over 400 000 samples scatters by 0.006 dB.
     */
    @ParameterizedTest
    @CsvSource({
        "PCM_16, false, 98.09",
        "PCM_16, true, 93.32",
        "PCM_24, false, 146.26",
        "PCM_24, true, 141.48"
    })
    void noiseIsThatOfTheTextbook(WavEncoding encoding, boolean dithered, double snrDb) {
        // two steps below full scale leave room for the dither and cost less than 0.001 dB
        double[] sound = sine(1 - 2 * Math.pow(2, 1 - encoding.bits()));
        double[] back = throughFile(encoding, dithered, sound);
        double signal = 0;
        double noise = 0;
        for (int i = 0; i < sound.length; i++) {
            signal += sound[i] * sound[i];
            noise += (back[i] - sound[i]) * (back[i] - sound[i]);
        }
        assertEquals(snrDb, 10 * Math.log10(signal / noise), 0.03);
    }

    /** With dither a tone far below one step survives; without, rounding makes it silence. */
    @Test
    void ditherKeepsWhatIsSmallerThanAStep() {
        double[] sound = sine(0.25 / 32768);
        assertEquals(0, correlation(throughFile(WavEncoding.PCM_16, false, sound), sound), 0);
    }

    @Test
    void ditheredErrorsDoNotDependOnTheSignal() {
        double[] sound = sine(0.25 / 32768);
        // expectation 1; noise of half a step rms on a tone of 0.18 scatters it by
        // 0.5 / 0.177 / √400000 = 0.0045, four times that is allowed
        assertEquals(1, correlation(throughFile(WavEncoding.PCM_16, true, sound), sound), 0.018);
    }

    private static double correlation(double[] back, double[] sound) {
        double sum = 0;
        double power = 0;
        for (int i = 0; i < sound.length; i++) {
            sum += back[i] * sound[i];
            power += sound[i] * sound[i];
        }
        return sum / power;
    }

    @ParameterizedTest
    @EnumSource(WavEncoding.class)
    void aSecondPassChangesNothing(WavEncoding encoding) {
        double[] once = throughFile(encoding, false, sine(0.7));
        Path again = dir.resolve("again.wav");
        try (WavWriter writer = WavWriter.create(again, new WavFormat(48000, 1, encoding))) {
            writer.write(new double[][] {once});
        }
        try (AudioFile wav = AudioFiles.open(again)) {
            assertArrayEquals(once, wav.read(0, FRAMES)[0], 0);
        }
    }
}
