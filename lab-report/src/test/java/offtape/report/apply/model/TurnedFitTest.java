package offtape.report.apply.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.junit.jupiter.api.Test;

/** A delay from phases that are told up to whole turns. */
class TurnedFitTest {

    private static final double TRUE_SECONDS = 170e-6;
    private static final double DEVIATION = 0.02;

    private static TurnedFit expectingNoDelay(double deviationSeconds) {
        double variance = deviationSeconds * deviationSeconds;
        return new TurnedFit(
                new double[] {0}, new Array2DRowRealMatrix(new double[][] {{variance}}));
    }

    private static void add(TurnedFit fit, double hz, double late) {
        double omega = 2 * Math.PI * hz;
        double told = Math.IEEEremainder(-omega * late, 2 * Math.PI);
        fit.add(hz, new double[] {-omega}, told, DEVIATION);
    }

    /**
     * At 20 kHz a delay of 170 µs turns 3.4 times, of which nothing is expected; at 500 Hz it turns
     * 0.085 times, which tells it within 0.02/(2π · 500 Hz) = 6 µs, so that 5 kHz is known within
     * 0.03 turns, and so on. Without noise the delay comes out but for the pull of the prior, a
     * relative weight of (0.02/(2π · 20 kHz · 100 µs))² = 3·10⁻⁶.
     */
    @Test
    void findsTurnsOnTheWayUp() {
        TurnedFit fit = expectingNoDelay(100e-6);
        for (double hz : new double[] {20_000, 12_000, 500, 5000}) {
            add(fit, hz, TRUE_SECONDS);
        }
        assertEquals(TRUE_SECONDS, fit.solve(List.of())[0], 1e-9);
    }

    /** One phase half a turn off among many moves the delay by less than its own deviation. */
    @Test
    void leansLittleOnWhatLiesFarOff() {
        TurnedFit fit = expectingNoDelay(100e-6);
        for (int i = 1; i <= 40; i++) {
            add(fit, 500.0 * i, TRUE_SECONDS);
        }
        fit.add(10_250, new double[] {-2 * Math.PI * 10_250}, half(10_250), DEVIATION);
        assertEquals(
                TRUE_SECONDS, fit.solve(List.of())[0], DEVIATION / (2 * Math.PI * 20_000) / 10);
    }

    private static double half(double hz) {
        return Math.PI - 2 * Math.PI * hz * TRUE_SECONDS;
    }

    /**
     * At 9 kHz 170 µs turn 1.53 times: from no delay the nearest turn is the wrong one. From a
     * start near the truth both phases agree, and that is kept. The prior pulls by a share of its
     * weight, (0.02/(2π · 13.45 kHz · 30 µs))² = 6.22·10⁻⁵ (13.45 kHz: both frequencies as
     * squares).
     */
    @Test
    void keepsTheStartThatAgreesBest() {
        double[] near = {TRUE_SECONDS + 3e-6};
        TurnedFit fit = expectingNoDelay(30e-6);
        add(fit, 9000, TRUE_SECONDS);
        add(fit, 10_000, TRUE_SECONDS);
        assertEquals(TRUE_SECONDS * (1 - 6.22e-5), fit.solve(List.of(near))[0], 2.4e-10);
    }

    /** Of angles that tell nothing what is expected stays. */
    @Test
    void keepsWhatIsExpectedWithoutAngles() {
        assertEquals(0, expectingNoDelay(1e-5).solve(List.of())[0], 0);
    }
}
