package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import offtape.core.standard.FlutterBand;
import org.junit.jupiter.api.Test;

class SharedPowerTest {

    private static final int COUNT = 5000;

    private static double[][] replays(Random random, int replays, double rms) {
        double[][] x = new double[replays][];
        for (int p = 0; p < replays; p++) {
            x[p] = Wavering.random(random, rms, COUNT);
        }
        return x;
    }

    private static final FlutterBand[] BANDS = {
        FlutterBand.WEIGHTED, FlutterBand.WOW, FlutterBand.FLUTTER
    };

    /** Against the power of the very noise that was drawn, over 240 draws with 2 to 4 replays. */
    @Test
    void bothPartsLieWithinTheirUncertainty() {
        int[] written = new int[BANDS.length];
        int[] read = new int[BANDS.length];
        for (int draw = 0; draw < 240; draw++) {
            Random random = new Random(4000 + draw);
            double[] w = Wavering.random(random, 0.02 + 0.06 * random.nextDouble(), COUNT);
            double[][] r = replays(random, 2 + draw % 3, 0.02 + 0.06 * random.nextDouble());
            SharedPower power = SharedPower.of(Wavering.heard(w, r), Wavering.RATE_HZ);
            for (int b = 0; b < BANDS.length; b++) {
                written[b] += holds(power.common(BANDS[b]), Wavering.power(w, BANDS[b])) ? 1 : 0;
                read[b] += holds(power.own(BANDS[b]), Wavering.power(r, BANDS[b])) ? 1 : 0;
            }
        }
        for (int b = 0; b < BANDS.length; b++) {
            System.out.printf("%s: written %d, read %d of 240%n", BANDS[b], written[b], read[b]);
            assertTrue(written[b] >= 216 && written[b] <= 238, BANDS[b] + ": " + written[b]);
            assertTrue(read[b] >= 216 && read[b] <= 238, BANDS[b] + ": " + read[b]);
        }
    }

    private static boolean holds(Share share, double power) {
        return Math.abs(share.power() - power) <= share.uncertainty();
    }

    /**
     * Replays that have nothing in common share no power on average: 100 draws of two, each with
     * the standard deviation that it states, keep their mean within three of a tenth of that.
     */
    @Test
    void nothingInCommonIsNothingOnAverage() {
        double sum = 0;
        double squares = 0;
        for (int draw = 0; draw < 100; draw++) {
            double[][] r = replays(new Random(100 + draw), 2, 0.05);
            Share share = SharedPower.of(r, Wavering.RATE_HZ).common(FlutterBand.FLUTTER);
            sum += share.power() / 100;
            squares += Math.pow(share.uncertainty() / 2, 2) / 100;
        }
        assertEquals(0, sum, 3 * Math.sqrt(squares / 100));
    }

    /** The same in every replay: nothing is left for the replays, whatever the band. */
    @Test
    void whatIsTheSameInAllIsCommon() {
        double[] w = Wavering.random(new Random(3), 0.05, COUNT);
        SharedPower power = SharedPower.of(new double[][] {w, w, w}, Wavering.RATE_HZ);
        assertEquals(0, power.own(FlutterBand.UNWEIGHTED).power(), 1e-15);
        Share common = power.common(FlutterBand.UNWEIGHTED);
        assertEquals(
                Wavering.power(w, FlutterBand.UNWEIGHTED), common.power(), common.uncertainty());
    }

    /**
     * By hand: two replays a·cos and a·cos with the opposite sign, written nothing: the
     * cross-spectrum is −a², so the common power is −a²/2 and the replays' own, half the difference
     * squared, a²: an estimate that scatters this far, as its uncertainty says.
     */
    @Test
    void twoReplaysOfOppositePhase() {
        double[] one = new double[COUNT];
        double[] other = new double[COUNT];
        Wavering.addLine(one, 20, 0.1, 0);
        Wavering.addLine(other, 20, 0.1, Math.PI);
        SharedPower power = SharedPower.of(new double[][] {one, other}, Wavering.RATE_HZ);
        assertEquals(-0.005, power.common(FlutterBand.FLUTTER).power(), 1e-4);
        assertEquals(0.01, power.own(FlutterBand.FLUTTER).power(), 1e-4);
        assertTrue(power.common(FlutterBand.FLUTTER).uncertainty() > 0.005);
    }
}
