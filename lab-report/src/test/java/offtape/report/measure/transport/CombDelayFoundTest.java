package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import offtape.report.measure.speed.HeardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CombDelayFoundTest {

    /**
     * A comb without chance: the likelihood's curvature alone makes the uncertainty. Even motion
     * between zeros 10 Hz apart, seen to 60 Hz, tells the delay to some tenths of a millisecond.
     */
    @Test
    void theCombTellsItsDelay() {
        CombDelay found = CombDelay.find(TwoHeads.heard(), 1.5).orElseThrow();
        assertEquals(TwoHeads.DELAY_S, found.seconds(), found.sigmaSeconds());
        assertEquals(TwoHeads.DELAY_S, found.seconds(), 2e-4);
        assertTrue(found.sigmaSeconds() > 1e-6 && found.sigmaSeconds() < 5e-4, found.toString());
    }

    /** A jerk heard again 50 values later at 512 values a second: 97.656 ms. */
    @Test
    void anyDelayIsFoundBetweenThoseThatAreTried() {
        double[] x = new double[4096];
        x[2023] = 1;
        x[2073] = -1;
        HeardDeviation heard = new HeardDeviation(x, 512, 60, f -> 0, List.of());
        assertEquals(0.09765625, CombDelay.find(heard, 0.15).orElseThrow().seconds(), 2.5e-5);
    }

    /** Of 8.2 s an eighth is 1.02 s: heads 1.2 s apart hear too little together. */
    @Test
    void aDelayOfMoreThanAnEighthOfTheToneIsNotTold() {
        double[] x = new double[4096];
        x[1748] = 1;
        x[2348] = -1;
        HeardDeviation heard = new HeardDeviation(x, 500, 60, f -> 0, List.of());
        assertEquals(Optional.empty(), CombDelay.find(heard, 1.5));
    }

    /** Motion of a real kind, wavering delay and hiss: within three standard deviations. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0613, 0.2871})
    void randomMotionTellsItsDelay(double delay) {
        HeardDeviation heard =
                new DrawnMotion(16, 500, delay, 8)
                        .noise(f -> f < 0.5 || f > 90 ? 0 : 1e-4)
                        .heardWithoutLines(delay, MadeReturn.HISS);
        CombDelay found = CombDelay.find(heard, 0.5).orElseThrow();
        assertEquals(delay, found.seconds(), 3 * found.sigmaSeconds());
        assertTrue(found.sigmaSeconds() < 0.002 * delay, found.toString());
    }

    @Test
    void oneHeadHasNoComb() {
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.single(60, 0, List.of()), 1.5));
    }

    /** A return that shows changes up to 3 Hz has two blocks of rates at most. */
    @Test
    void tooFewRatesTellNothing() {
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.single(3, 0, List.of()), 1.5));
    }

    @Test
    void aMomentTellsNothing() {
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.moment(), 1.5));
    }

    /** Heads closer than 5 ms are not looked for. */
    @Test
    void noDelayIsPossible() {
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.heard(), 0.005));
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.heard(), 0));
    }

    /** The delay of the programme bounds that of the heads; nothing else is taken for it. */
    @Test
    void aDelayIsFoundUpToTheLongestPossible() {
        assertTrue(CombDelay.find(TwoHeads.heard(), 0.101).isPresent());
        assertEquals(Optional.empty(), CombDelay.find(TwoHeads.heard(), 0.09));
    }

    /** Up to 25 Hz there are two zeros, which edges of the spectrum may look like. */
    @Test
    void twoZerosAreNoComb() {
        HeardDeviation heard = TwoHeads.heard();
        HeardDeviation narrow =
                new HeardDeviation(heard.percent(), 500, 25, heard.noiseDensity(), heard.lines());
        assertEquals(Optional.empty(), CombDelay.find(narrow, 1.5));
    }

    /**
     * Fisher's information on τ in bins of the density g·L, L unknown in each block, is the sum of
     * squares of d ln g/dτ about its mean in the block, over 1.944 for neighbours that say the
     * same. Here g = 4·sin²(π·f·τ) + (2π · 0.6·τ/T)², T = 8.192 s, blocks of 12 bins or 8 % of the
     * first.
     */
    @Test
    void theUncertaintyIsThatOfTheInformation() {
        double information = 0;
        int to;
        for (int from = 5; from < 491; from = to) {
            to = Math.min(491, from + (int) Math.max(12, 0.08 * from));
            double sum = 0;
            double squares = 0;
            for (int k = from; k < to; k++) {
                double slope = (logGain(k, 0.1 + 1e-6) - logGain(k, 0.1 - 1e-6)) / 2e-6;
                sum += slope;
                squares += slope * slope;
            }
            information += squares - sum * sum / (to - from);
        }
        double sigma = Math.sqrt(1.944 / information);
        assertEquals(
                sigma,
                CombDelay.find(TwoHeads.heard(), 0.15).orElseThrow().sigmaSeconds(),
                0.06 * sigma);
    }

    private static double logGain(int bin, double seconds) {
        double sine = Math.sin(Math.PI * bin * 500 / 4096 * seconds);
        double ends = 2 * Math.PI * 0.6 * seconds / 8.192;
        return Math.log(4 * sine * sine + ends * ends);
    }
}
