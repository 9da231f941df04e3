package offtape.core.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import org.junit.jupiter.api.Test;

class BentSoundTest {

    private static final int RATE = 48_000;
    private static final TapeCurve TANH =
            new TapeCurve(List.of(new Bend(Bend.Shape.TANH, 1)), List.of(1.0), 0);

    /** What is small passes as it is, through emphasis and its inverse. */
    @Test
    void leavesSmallSoundsAlone() {
        double[] x = tone(1000, 1e-4);
        double[] y = bent(x, new Emphasis(50e-6, 5e-6));
        for (int i = 1000; i < x.length - 1000; i++) {
            assertEquals(x[i], y[i], 1e-8);
        }
    }

    /**
     * d·tanh(x/d) = x − x³/(3d²) + …: a sine of peak 0.3 has K3 of 0.3²/12 = 0.75 %, less by its
     * higher orders: with x⁵·2/15 the third is A³/12 − A⁵/24, over A − A³/4.
     */
    @Test
    void hasTheHarmonicsOfItsCurve() {
        double[] y = bent(tone(1000, 0.3), Emphasis.NONE);
        double third = (0.0225 / 3 - Math.pow(0.3, 4) / 24) / (1 - 0.0225);
        assertEquals(third, amplitude(y, 3000) / amplitude(y, 1000), 3e-5);
    }

    /** 9 kHz bent hard: what would fold back from 27 kHz to 21 kHz is not there. */
    @Test
    void doesNotFoldHarmonicsBack() {
        double[] y = bent(tone(9000, 1), Emphasis.NONE);
        assertEquals(0, amplitude(y, 21_000) / amplitude(y, 9000), 1e-5);
    }

    private static double[] bent(double[] x, Emphasis emphasis) {
        return new BentSound(new MemoryAudio("tone", RATE, x), List.of(TANH), List.of(emphasis), 1)
                .read(0, x.length)[0];
    }

    private static double[] tone(double hz, double peak) {
        double[] x = new double[RATE / 2];
        for (int i = 0; i < x.length; i++) {
            x[i] = peak * Math.sin(2 * Math.PI * hz * i / RATE);
        }
        return x;
    }

    /** Of a tone that fits into a tenth of a second, amid the sound. */
    private static double amplitude(double[] y, int hz) {
        int n = RATE / 10;
        Spectrum s = RealFft.ofSize(n).forward(y, 8000, n);
        return 2 * s.magnitude(hz / 10) / n;
    }
}
