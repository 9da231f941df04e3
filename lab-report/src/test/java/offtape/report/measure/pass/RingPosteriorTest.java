package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("study")
class RingPosteriorTest {

    private static double[] at(double still, double turning, double degrees) {
        double phase = Math.toRadians(degrees);
        return new double[] {still + turning * Math.cos(phase), turning * Math.sin(phase)};
    }

    /** Three pointers on the ring about 0.06 with the radius 0.04, a third of a turn apart. */
    @Test
    void threeReplaysFixARing() {
        double[][] z = {at(0.06, 0.04, 10), at(0.06, 0.04, 130), at(0.06, 0.04, 250)};
        RingPosterior ring = RingPosterior.of(z, 1e-4, 0);
        assertEquals(0.06, ring.still().middle(), 0.002);
        assertEquals(0.04, ring.turning().middle(), 0.002);
        assertTrue(ring.still().reach() < 0.004 && ring.turning().reach() < 0.004);
        assertTrue(ring.still().share().isToldBeside(ring.turning().share()));
    }

    /** Two replays a right angle apart leave a whole line of centres. */
    @Test
    void twoReplaysDoNot() {
        double[][] z = {at(0.06, 0.04, 10), at(0.06, 0.04, 100)};
        RingPosterior ring = RingPosterior.of(z, 1e-4, 0);
        assertTrue(ring.still().low() < 0.06 && ring.still().high() > 0.06);
        assertTrue(!ring.still().share().isToldBeside(ring.turning().share()));
    }

    /** Four times the same pointer: replays would hardly have fallen into the same phase. */
    @Test
    void whatDoesNotTurnIsTheTapes() {
        double[][] z = {at(0.05, 1e-5, 0), at(0.05, 1e-5, 80), at(0.05, 1e-5, 200), at(0.05, 0, 0)};
        RingPosterior ring = RingPosterior.of(z, 1e-4, 0);
        assertEquals(0.05, ring.still().middle(), 0.002);
        assertTrue(ring.turning().high() < 0.005, ring.toString());
    }

    @Test
    void whatTurnsAboutNothingIsTheReplays() {
        double[][] z = {at(0, 0.05, 5), at(0, 0.05, 100), at(0, 0.05, 190), at(0, 0.05, 290)};
        RingPosterior ring = RingPosterior.of(z, 1e-4, 0);
        assertEquals(0.05, ring.turning().middle(), 0.001);
        assertTrue(ring.still().high() < 0.003, ring.toString());
    }

    /**
     * 210 draws of two to four replays, both lengths and all phases at random, noise of 0.001 %.
     */
    @Test
    void trueLengthsLieWithinTheirRanges() {
        int still = 0;
        int turning = 0;
        for (int draw = 0; draw < 210; draw++) {
            Random random = new Random(draw);
            double c = 0.1 * random.nextDouble();
            double a = 0.1 * random.nextDouble();
            double[][] z = new double[2 + draw % 3][];
            for (int p = 0; p < z.length; p++) {
                z[p] = at(c, a, 360 * random.nextDouble());
                z[p][0] += 0.001 * random.nextGaussian();
                z[p][1] += 0.001 * random.nextGaussian();
            }
            RingPosterior ring = RingPosterior.of(z, 0.001, 0);
            still += c >= ring.still().low() && c <= ring.still().high() ? 1 : 0;
            turning += a >= ring.turning().low() && a <= ring.turning().high() ? 1 : 0;
        }
        System.out.printf("pointers: still %d, turning %d of 210%n", still, turning);
        assertTrue(still >= 189 && still <= 208, "still " + still);
        assertTrue(turning >= 189 && turning <= 208, "turning " + turning);
    }

    /** Values of I₀(x)·exp(−x) from a general-purpose numerical library (SciPy 1.17, i0e). */
    @Test
    void besselFunctionIsRight() {
        assertEquals(0.64503527044915, RingPosterior.scaledI0(0.5), 1e-11);
        assertEquals(0.46575960759364, RingPosterior.scaledI0(1), 1e-11);
        assertEquals(0.12783333716343, RingPosterior.scaledI0(10), 1e-11);
        assertEquals(0.09000858886439, RingPosterior.scaledI0(19.9), 1e-10);
        assertEquals(0.08955376362061, RingPosterior.scaledI0(20.1), 1e-6);
        assertEquals(0.02304255841508, RingPosterior.scaledI0(300), 1e-9);
    }
}
