package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SteadyPhaseTest {

    /** Lengths that end inside, at and just beyond the stretches that are turned side by side. */
    @Test
    void everyValueIsThePlatformsCosineAndSine() {
        double hz = 3150;
        double step = 1.0 / 48_000;
        for (int length : new int[] {1, 255, 256, 257, 1023, 1024, 1025, 3000}) {
            double[] cos = new double[length];
            double[] sin = new double[length];
            PhaseLaw.steady(hz).fill(1.25, step, cos, sin);
            for (int i = 0; i < length; i++) {
                double phase = 2 * Math.PI * hz * (1.25 + i * step);
                assertEquals(Math.cos(phase), cos[i], 1e-10, length + ", " + i);
                assertEquals(Math.sin(phase), sin[i], 1e-10, length + ", " + i);
            }
        }
    }
}
