package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import offtape.core.standard.FlutterBand;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        double[][] weights =
                Arrays.stream(BANDS)
                        .map(band -> Wavering.weights(band, COUNT))
                        .toArray(double[][]::new);
        for (int draw = 0; draw < 240; draw++) {
            Random random = new Random(4000 + draw);
            double[] w = Wavering.random(random, 0.02 + 0.06 * random.nextDouble(), COUNT);
            double[][] r = replays(random, 2 + draw % 3, 0.02 + 0.06 * random.nextDouble());
            SharedPower power = SharedPower.of(Wavering.heard(w, r), Wavering.RATE_HZ);
            double[] onTape = Wavering.powers(w);
            double[] ofReplays = new double[onTape.length];
            for (double[] one : r) {
                double[] powers = Wavering.powers(one);
                Arrays.setAll(ofReplays, k -> ofReplays[k] + powers[k] / r.length);
            }
            for (int b = 0; b < BANDS.length; b++) {
                double common = Wavering.sum(onTape, weights[b]);
                double own = Wavering.sum(ofReplays, weights[b]);
                written[b] += holds(power.common(BANDS[b]), common) ? 1 : 0;
                read[b] += holds(power.own(BANDS[b]), own) ? 1 : 0;
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

    private static final int SHORT = 1000;

    /** Replays of which each has one value that is not 0, whose spectrum is flat. */
    private static SharedPower clicks(int at, double... heights) {
        double[][] x = new double[heights.length][SHORT];
        for (int p = 0; p < heights.length; p++) {
            x[p][at] = heights[p];
        }
        return SharedPower.of(x, Wavering.RATE_HZ);
    }

    /**
     * Mean square in a bin of a click of height 1: 2/n² for both signs of frequency, over the mean
     * of the squared window: raised cosines over a twentieth at either end, whose squares have the
     * mean 3/8, leave 1 − 2·0.05·5/8.
     */
    private static final double CLICK = 2.0 / SHORT / SHORT / 0.9375;

    /** Clicks of 3 and 1: their product is common, half their squared difference is own. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 2, 90, 200, 249, 250})
    void clicksHaveTheSamePowerAtEveryFrequency(double hz) {
        assertEquals(3 * CLICK, clicks(500, 3, 1).commonNear(hz), 1e-12 * CLICK);
        assertEquals(2 * CLICK, clicks(500, 3, 1).ownNear(hz), 1e-12 * CLICK);
    }

    /** An estimate of what is common may fall below nothing, but not where a power is asked for. */
    @Test
    void noCommonPowerIsLessThanNone() {
        assertEquals(0, clicks(500, 2, -2).commonNear(20), 0);
        assertEquals(8 * CLICK, clicks(500, 2, -2).ownNear(20), 1e-12 * CLICK);
    }

    /**
     * The window rises as 0.5 − 0.5·cos(π·x) over 50 of 1000 values, the middle of a value
     * counting, and falls in the same way.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.01", "24, 0.49", "49, 0.99", "50, 1", "949, 1", "975, 0.49", "999, 0.01"})
    void theEndsAreFadedOut(int at, double place) {
        double gain = 0.5 - 0.5 * Math.cos(Math.PI * place);
        assertEquals(4 * gain * gain * CLICK, clicks(at, 2, 2).commonNear(60), 1e-9 * gain * CLICK);
    }

    /**
     * A line of which a replay adds 0.1 % peak, 0.005 %² mean square: bins of 0.1 Hz around it hold
     * it between them. So many count as a quarter of the way up from 0 Hz, 3 to 40 to either side.
     */
    @ParameterizedTest
    @CsvSource({
        // line, looked at around, bins that count or 0 if the line lies beyond
        "20, 20, 81",
        "20, 23, 81",
        "20, 25, 0",
        "8, 8, 41",
        "9, 7.6, 39",
        "10.5, 8, 0",
        "1, 1, 7",
        "1.7, 1, 0",
        "0.6, 0.2, 0",
        "0.3, 0.1, 4"
    })
    void whatLiesAroundALineIsAveraged(double lineHz, double aroundHz, int bins) {
        double[][] x = new double[2][COUNT];
        Wavering.addLine(x[0], lineHz, 0.1, 1);
        Wavering.addLine(x[1], lineHz, 0.1, 1 + Math.PI);
        // halves of the difference squared: twice the power of either
        double near = SharedPower.of(x, Wavering.RATE_HZ).ownNear(aroundHz);
        if (bins == 0) {
            assertEquals(0, near, 0.01 * 0.01);
        } else {
            assertEquals(0.01 / bins, near, 0.03 * 0.01 / bins);
        }
    }

    /**
     * Three clicks of 3, 1 and 2: W = (3 + 6 + 2)/3, R = 1. By the formula of the class the common
     * part of a bin scatters by 2·(W·R + R²/9)/3 + R²/9 and what is own by R²/9, and what the
     * window hides adds 1 − Σw⁴·n/(Σw²)², of W² to the one and of R²/3 to the other. With so many
     * bins Student's factor is that of a Gaussian, 2.
     */
    @Test
    void uncertaintiesAreThoseOfTheFormula() {
        double squares = 0;
        double fourths = 0;
        for (int i = 0; i < SHORT; i++) {
            double in = Math.min(1, (Math.min(i, SHORT - 1 - i) + 0.5) / 50);
            double w = 0.5 - 0.5 * Math.cos(Math.PI * in);
            squares += w * w;
            fourths += w * w * w * w;
        }
        double alike = SHORT * fourths / squares / squares;
        double hidden = 1 - 1 / alike;
        double bins = 0;
        double powers = 0;
        for (int k = 1; k <= SHORT / 2; k++) {
            double gain = FlutterBand.UNWEIGHTED.gain(k * Wavering.RATE_HZ / SHORT);
            powers += gain * gain;
            bins += Math.pow(gain, 4);
        }
        double w = 11.0 / 3;
        double common = 2 * (w + 1.0 / 9) / 3 + 1.0 / 9 + hidden * w * w;
        double own = 1.0 / 9 + hidden / 3;
        SharedPower power = clicks(500, 3, 1, 2);
        Share c = power.common(FlutterBand.UNWEIGHTED);
        Share o = power.own(FlutterBand.UNWEIGHTED);
        assertEquals(w * powers * CLICK, c.power(), 1e-9 * CLICK);
        assertEquals(powers * CLICK, o.power(), 1e-9 * CLICK);
        double student = 2.0;
        assertEquals(
                student * Math.sqrt(alike * bins * common) * CLICK,
                c.uncertainty(),
                0.01 * c.uncertainty());
        assertEquals(
                student * Math.sqrt(alike * bins * own) * CLICK,
                o.uncertainty(),
                0.01 * o.uncertainty());
    }

    /** Nothing at all: no power, and no doubt. */
    @Test
    void silenceHasNoPower() {
        assertEquals(new Share(0, 0), clicks(500, 0, 0).common(FlutterBand.WOW));
        assertEquals(new Share(0, 0), clicks(500, 0, 0).own(FlutterBand.WOW));
    }
}
