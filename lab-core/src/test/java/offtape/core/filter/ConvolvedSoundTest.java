package offtape.core.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the sum that defines a convolution. */
class ConvolvedSoundTest {

    private static double[] convolved(double[] x, double[] h) {
        double[] y = new double[x.length + h.length - 1];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < h.length; j++) {
                y[i + j] += x[i] * h[j];
            }
        }
        return y;
    }

    private static double[] noise(int seed, int length) {
        return new Random(seed).doubles(length, -1, 1).toArray();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 37, 6000})
    void isTheSumThatDefinesIt(int taps) {
        double[] x = noise(1, 20_000);
        double[] h = noise(2, taps);
        ConvolvedSound sound =
                new ConvolvedSound(new MemoryAudio("x", 48_000, x), new double[][] {h});
        double[] expected = convolved(x, h);
        assertEquals(expected.length, sound.frames());
        assertArrayEquals(expected, sound.read(0, expected.length)[0], 1e-10);
        assertArrayEquals(
                Arrays.copyOfRange(expected, 7000, 7123), sound.read(7000, 123)[0], 1e-10);
        double[] around = sound.read(-50, expected.length + 100)[0];
        assertArrayEquals(new double[50], Arrays.copyOf(around, 50), 1e-10);
        assertArrayEquals(
                new double[50],
                Arrays.copyOfRange(around, expected.length + 50, expected.length + 100),
                1e-10);
    }

    /** A response that is longer than a stretch of sound is taken whole: h₀, h₁ − 2·h₀, … */
    @Test
    void aResponseMayBeLongerThanAStretch() {
        double[] h = noise(3, 20_000);
        ConvolvedSound sound =
                new ConvolvedSound(
                        new MemoryAudio("x", 48_000, new double[] {1, -2}), new double[][] {h});
        double[] y = sound.read(0, 20_001)[0];
        assertEquals(h[0], y[0], 1e-10);
        assertEquals(h[10_000] - 2 * h[9999], y[10_000], 1e-10);
        assertEquals(-2 * h[19_999], y[20_000], 1e-10);
    }

    @Test
    void oneChannelStandsForBoth() {
        double[][] h = {{1}, {0, 2}};
        double[][] padded = {{1, 0}, h[1]};
        ConvolvedSound wide =
                new ConvolvedSound(new MemoryAudio("x", 48_000, new double[] {1, 2}), padded);
        assertArrayEquals(new double[] {1, 2, 0}, wide.read(0, 3)[0], 1e-12);
        assertArrayEquals(new double[] {0, 2, 4}, wide.read(0, 3)[1], 1e-12);
        ConvolvedSound pair =
                new ConvolvedSound(
                        new MemoryAudio("x", 48_000, new double[] {1}, new double[] {3}),
                        new double[][] {{0.5}});
        assertArrayEquals(new double[] {0.5}, pair.read(0, 1)[0], 1e-12);
        assertArrayEquals(new double[] {1.5}, pair.read(0, 1)[1], 1e-12);
    }

    /** What it says of itself is what the sound says; it is closed with it. */
    @Test
    void allElseIsTheSoundsOwn() {
        boolean[] closed = new boolean[1];
        AudioSource source =
                new AudioSource() {
                    @Override
                    public int sampleRateHz() {
                        return 96_000;
                    }

                    @Override
                    public int channels() {
                        return 2;
                    }

                    @Override
                    public long frames() {
                        return 10;
                    }

                    @Override
                    public double[][] read(long startFrame, int count) {
                        return new double[2][count];
                    }

                    @Override
                    public String name() {
                        return "song.wav";
                    }

                    @Override
                    public void close() {
                        closed[0] = true;
                    }
                };
        ConvolvedSound sound = new ConvolvedSound(source, new double[][] {{1, 2, 3}});
        assertEquals(96_000, sound.sampleRateHz());
        assertEquals("song.wav", sound.name());
        assertEquals(2, sound.channels());
        assertEquals(12, sound.frames());
        assertEquals(0, sound.read(0, 0)[1].length);
        assertFalse(closed[0]);
        sound.close();
        assertTrue(closed[0]);
    }
}
