package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files from the reference encoder; {@code flac-files.txt} beside them says how they were made. */
class FlacReferenceFilesTest {

    /**
     * A triangle of period 200 with noise of a linear congruential generator (multiplier and
     * increment as in Numerical Recipes, "quick and dirty"), a stretch of silence, a stretch whose
     * lowest three bits are empty.
     */
    private static long[] samples(int bits, int channel, int frames) {
        long[] x = new long[frames];
        int state = channel + 1;
        for (int i = 0; i < frames; i++) {
            state = state * 1_664_525 + 1_013_904_223;
            long triangle = Math.abs(i % 200 - 100) - 50;
            x[i] = (triangle << bits - 8) + (state >> 38 - bits);
            x[i] = i >= 400 && i < 600 ? 0 : x[i];
            x[i] = i >= 800 && i < 1000 ? x[i] & ~7 : x[i];
        }
        return x;
    }

    @ParameterizedTest
    @CsvSource({
        "mono-8, 8, 1, 8000, 1500",
        "stereo-16, 16, 2, 44100, 1500",
        "stereo-24, 24, 2, 96000, 1500",
        "stereo-32, 32, 2, 384000, 1200",
        "eight-24, 24, 8, 48000, 400",
        "piped-20, 20, 2, 48000, 1200"
    })
    void everySampleIsThere(String name, int bits, int channels, int rateHz, int frames)
            throws URISyntaxException {
        Path file = Path.of(getClass().getResource(name + ".flac").toURI());
        try (AudioFile flac = AudioFiles.open(file)) {
            assertEquals(List.of(), flac.notes());
            assertEquals(rateHz, flac.sampleRateHz());
            assertEquals(channels, flac.channels());
            assertEquals(frames, flac.frames());
            double[][] sound = flac.read(-1, frames + 2);
            for (int c = 0; c < channels; c++) {
                long[] expected = samples(bits, c, frames);
                assertEquals(0, sound[c][0]);
                assertEquals(0, sound[c][frames + 1]);
                for (int i = 0; i < frames; i++) {
                    assertEquals(expected[i], Math.scalb(sound[c][i + 1], bits - 1), 0);
                }
            }
        }
    }
}
