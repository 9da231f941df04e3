package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FalseAlarmTest {

    /**
     * One other bin: both exponential, P(X > c·Y) = ∫exp(−y)·exp(−c·y)dy = 1/(1 + c). The median of
     * three has the density 6·exp(−2y)·(1 − exp(−y)), so P = 6/(c + 2) − 6/(c + 3) = 6/((c + 2)·(c
     * + 3)).
     */
    @Test
    void theChanceIsThatWorkedOutByHand() {
        for (double c : new double[] {0, 1, 4.5, 30}) {
            assertEquals(1 / (1 + c), Math.exp(FalseAlarm.logChance(c, 1)), 1e-12);
            assertEquals(6 / ((c + 2) * (c + 3)), Math.exp(FalseAlarm.logChance(c, 3)), 1e-12);
        }
    }

    /** With the median known, ln 2 of the mean, the chance is exp(−c·ln 2). */
    @Test
    void theChanceTendsToAPowerOfTwo() {
        assertEquals(-10 * Math.log(2), FalseAlarm.logChance(10, 100_001), 0.01);
    }

    /** 200 000 draws with 15 others, within five standard deviations of their count. */
    @Test
    void theChanceIsThatOfDraws() {
        Random random = new Random(5);
        double[] others = new double[15];
        int over = 0;
        int draws = 200_000;
        for (int i = 0; i < draws; i++) {
            Arrays.setAll(others, k -> -Math.log(1 - random.nextDouble()));
            Arrays.sort(others);
            over += -Math.log(1 - random.nextDouble()) > 6 * others[7] ? 1 : 0;
        }
        double chance = Math.exp(FalseAlarm.logChance(6, 15));
        assertEquals(0.03, chance, 0.015);
        assertEquals(chance, (double) over / draws, 5 * Math.sqrt(chance / draws));
    }
}
