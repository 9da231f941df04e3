package offtape.report.apply.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NullDepthTest {

    private static final int FRAMES = 4096;

    /** A glide against itself, late by a third of a frame and half as loud, leaves nothing. */
    @Test
    void takesDelayAndGainOut() {
        double[][] truth = {glide(0), glide(0)};
        double[][] made = {glide(1 / 3.0), glide(1 / 3.0)};
        for (double[] channel : made) {
            for (int i = 0; i < FRAMES; i++) {
                channel[i] *= 0.5;
            }
        }
        NullDepth depth = NullDepth.of(truth, made);
        assertEquals(1 / 3.0, depth.delayFrames(), 1e-3);
        assertEquals(6.0206, depth.gainDb(), 1e-3);
        assertTrue(depth.db() < -60);
    }

    /** Noise of a tenth of the rms beside it leaves −20 dB. */
    @Test
    void tellsHowMuchIsLeft() {
        SplittableRandom random = new SplittableRandom(5);
        double[] truth = new double[FRAMES];
        double[] made = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            truth[i] = random.nextGaussian();
            made[i] = truth[i] + 0.1 * random.nextGaussian();
        }
        // after the best gain 1/(1 + 0.01) some 0.04 dB less
        assertEquals(-20, NullDepth.of(new double[][] {truth}, new double[][] {made}).db(), 0.3);
    }

    private static double[] glide(double late) {
        double[] x = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            double fade = Math.pow(Math.sin(Math.PI * (i - late) / FRAMES), 4);
            x[i] = fade * Math.sin((0.1 + 1e-4 * (i - late)) * (i - late));
        }
        return x;
    }
}
