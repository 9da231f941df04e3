package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
    @Tag("study")
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
    @Tag("study")
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

    /**
     * Against all rings weighed in other coordinates (centre by length and angle), a pointer's
     * density summed up over the angle at which it lies on the ring. The angle from which phases
     * are counted decides where centres are tried, a standard deviation of the noise apart; on
     * average over angles the ends agree within a seventh of that.
     */
    @ParameterizedTest
    @ValueSource(strings = {"10 130 250", "0 100 170", "20 75 200 310"})
    void rangesAreThoseOfAllRings(String degrees) {
        double sigma = 0.1;
        double[] seen = new double[6];
        int turns = 20;
        double[] angles =
                Arrays.stream(degrees.split(" ")).mapToDouble(Double::parseDouble).toArray();
        for (int k = 0; k < turns; k++) {
            double turn = 2 * Math.PI * k / turns;
            RingPosterior ring =
                    RingPosterior.of(
                            Arrays.stream(angles)
                                    .mapToObj(d -> turned(at(0.6, 0.5, d), turn))
                                    .toArray(double[][]::new),
                            sigma,
                            0);
            double[] range = {
                ring.still().low(), ring.still().middle(), ring.still().high(),
                ring.turning().low(), ring.turning().middle(), ring.turning().high()
            };
            Arrays.setAll(seen, i -> seen[i] + range[i] / turns);
        }
        RingSums sums =
                new RingSums(
                        Arrays.stream(angles)
                                .mapToObj(d -> at(0.6, 0.5, d))
                                .toArray(double[][]::new),
                        sigma);
        double[] wanted = {
            sums.still(0.02275), sums.still(0.5), sums.still(0.97725),
            sums.turning(0.02275), sums.turning(0.5), sums.turning(0.97725)
        };
        assertArrayEquals(wanted, seen, sigma / 7);
    }

    private static double[] turned(double[] z, double angle) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        return new double[] {z[0] * cos - z[1] * sin, z[0] * sin + z[1] * cos};
    }

    /** The same ring in a unit that is 128 times as small: nothing but the unit changes. */
    @Test
    void theUnitDoesNotMatter() {
        double[][] z = {at(0.06, 0.04, 10), at(0.06, 0.04, 130), at(0.06, 0.04, 200)};
        double[][] small = new double[z.length][];
        for (int p = 0; p < z.length; p++) {
            small[p] = new double[] {128 * z[p][0], 128 * z[p][1]};
        }
        RingPosterior one = RingPosterior.of(z, 0.005, 0);
        RingPosterior other = RingPosterior.of(small, 128 * 0.005, 0);
        assertEquals(128 * one.still().low(), other.still().low(), 1e-9);
        assertEquals(128 * one.still().middle(), other.still().middle(), 1e-9);
        assertEquals(128 * one.turning().middle(), other.turning().middle(), 1e-9);
        assertEquals(128 * one.turning().high(), other.turning().high(), 1e-9);
    }

    /**
     * Pointers that agree perfectly are believed to a hundredth of the longest only: that is |0.5 +
     * 0.4·exp(i·10°)| = 0.8967. A centre among three has twice a third of the variance of the noise
     * (their distances from it go with the cosine of their angles), and centres are tried one
     * standard deviation apart, which leaves a third of one.
     */
    @Test
    void noPartIsTakenToRepeatPerfectly() {
        double[][] z = {at(0.5, 0.4, 10), at(0.5, 0.4, 130), at(0.5, 0.4, 250)};
        RingPosterior perfect = RingPosterior.of(z, 0, 0);
        double sigma = 0.008967;
        assertEquals(2 * sigma * Math.sqrt(2 / 3.0), perfect.still().reach(), 0.35 * sigma);
        assertEquals(perfect, RingPosterior.of(z, 0.0089, 0));
        assertTrue(RingPosterior.of(z, 0.02, 0).still().reach() > perfect.still().reach());
    }

    /**
     * Noise that all replays share shifts the tape's pointer and leaves the ring's radius alone:
     * two standard deviations are added to either side in squares.
     */
    @Test
    void whatAllShareBlursTheTapesPartOnly() {
        double[][] z = {at(0.06, 0.04, 10), at(0.06, 0.04, 130), at(0.06, 0.04, 250)};
        RingPosterior sharp = RingPosterior.of(z, 0.002, 0);
        RingPosterior blurred = RingPosterior.of(z, 0.002, 0.01);
        assertEquals(sharp.turning(), blurred.turning());
        assertEquals(sharp.still().blurred(0.01), blurred.still());
        assertTrue(blurred.still().reach() > 0.02);
    }

    /** Legs 3 and 4, 5 and 12; the lower end is a length and stops at nothing. */
    @Test
    void blursAddInSquares() {
        RingPosterior.Range range = new RingPosterior.Range(17, 20, 25);
        assertEquals(new RingPosterior.Range(15, 20, 20 + Math.sqrt(41)), range.blurred(2));
        assertEquals(new RingPosterior.Range(20 - Math.sqrt(153), 20, 33), range.blurred(6));
        assertEquals(0, new RingPosterior.Range(1, 2, 3).blurred(1).low(), 0);
        assertEquals(range, range.blurred(0));
    }

    /** A sine of peak a has the power a²/2; its error reaches to the farther end's. */
    @ParameterizedTest
    @CsvSource({"1, 2, 4, 2, 6, 2", "0, 2, 2.2, 2, 2, 2", "1, 3, 4, 4.5, 4, 2"})
    void aPeakHasThePowerOfASine(
            double low, double middle, double high, double power, double error, double reach) {
        RingPosterior.Range range = new RingPosterior.Range(low, middle, high);
        assertEquals(power, range.share().power(), 1e-12);
        assertEquals(error, range.share().uncertainty(), 1e-12);
        assertEquals(reach, range.reach(), 1e-12);
    }
}
