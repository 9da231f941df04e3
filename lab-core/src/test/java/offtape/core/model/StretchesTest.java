package offtape.core.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;

/**
 * A stretch read alone is what it is in the whole, whatever is done to the sound, but for what the
 * ends of the curve's own stretches leave, below −140 dB.
 */
class StretchesTest {

    private static final int RATE = 48_000;

    @Test
    void isTheSameInStretches() {
        double[] x = new double[24_000];
        for (int i = 0; i < x.length; i++) {
            x[i] = 0.5 * Math.sin(0.05 * i) + 0.2 * Math.sin(0.9 * i);
        }
        AudioSource made = machine(new MemoryAudio("sound", RATE, x, x));
        double[][] whole = made.read(0, x.length);
        double[][] part = made.read(12_345, 3000);
        for (int c = 0; c < 2; c++) {
            assertArrayEquals(Arrays.copyOfRange(whole[c], 12_345, 15_345), part[c], 1e-7);
        }
    }

    /** A filter of one tap ahead of time zero brings everything one frame forward. */
    @Test
    void bringsForwardByTheLead() {
        double[] x = {0, 0, 1, 0, 0, 0};
        AudioSource made =
                new CoupledSound(
                        new MemoryAudio("click", RATE, x), new double[][][] {{{1, 0, 0}}}, 1);
        assertArrayEquals(new double[] {0, 1, 0, 0, 0, 0}, made.read(0, 6)[0], 1e-12);
    }

    /** Normal numbers of variance 1, and the same at the same place. */
    @Test
    void makesNoiseByItsPlace() {
        WhiteNoise noise = new WhiteNoise(RATE, 2, 9);
        double[][] x = noise.read(-500, 100_000);
        double squares = 0;
        for (double v : x[0]) {
            squares += v * v;
        }
        assertEquals(1, squares / x[0].length, 0.02);
        assertEquals(x[1][700], noise.read(200, 1)[1][0], 0);
    }

    private static AudioSource machine(AudioSource sound) {
        TapeCurve curve = new TapeCurve(List.of(new Bend(Bend.Shape.TANH, 1)), List.of(1.0), 0.01);
        Emphasis emphasis = new Emphasis(50e-6, 0);
        AudioSource bent =
                new BentSound(sound, List.of(curve, curve), List.of(emphasis, emphasis), 1);
        double[] own = MagnitudeTaps.of(hz -> 1 / (1 + hz / 9000), RATE, 256);
        double[] leak = new double[own.length];
        leak[250] = 0.01;
        AudioSource pair = new CoupledSound(bent, new double[][][] {{own, leak}, {null, own}}, 256);
        double[] rest = MagnitudeTaps.of(hz -> hz < 50 ? 1e-6 : 0, 1000, 256);
        AudioSource ahead =
                new CoupledSound(new WhiteNoise(1000, 1, 3), new double[][][] {{rest}}, 256);
        AudioSource wavering = new WaveringSound(pair, ahead);
        SteadyLines hum = SteadyLines.drawn(new double[] {50}, new double[] {0.001}, 1);
        return new NoisySound(wavering, new WhiteNoise(RATE, 2, 4), List.of(hum, hum));
    }
}
