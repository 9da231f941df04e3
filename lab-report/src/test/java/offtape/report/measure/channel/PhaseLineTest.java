package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Two phases by hand: 2 at 1 rad/s with the weight 3, 3 at 2 rad/s with the weight 1. Through zero:
 * slope (3·1·2 + 1·2·3)/(3·1 + 1·4) = 12/7; what is left is 2/7 and −3/7, whose weighted squares
 * are 12/49 + 9/49 = 3/7.
 */
class PhaseLineTest {

    private static PhaseLine line(double times) {
        double[] phase = {2 * times, 3 * times};
        return new PhaseLine(
                new PhaseBands(
                        new double[] {1, 2}, phase, new double[] {3, 1}, new double[] {0, 0}));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, -10})
    void slopeAndWhatIsLeft(double times) {
        PhaseLine line = line(times);
        assertEquals(times * 12 / 7, line.slope(), 1e-12);
        assertEquals(times * times * 3 / 7, line.rest(), 1e-12);
        assertEquals(Math.abs(times) * Math.sqrt(3 / 7.0 / 4), line.scatter(), 1e-12);
    }

    /** By the weights 1/√7; a scatter beyond them, 300/7 of two values, counts instead. */
    @Test
    void theSlopeErrsByWeightsOrScatter() {
        assertEquals(Math.sqrt(1 / 7.0), line(1).slopeError(), 1e-12);
        assertEquals(Math.sqrt(300 / 49.0), line(10).slopeError(), 1e-12);
    }

    /** The line through both phases, 1 + w, has the value 1 at zero. */
    @Test
    void aFreeLineBeginsAtItsIntercept() {
        assertEquals(1, line(1).startPhase(), 1e-12);
        assertEquals(-2, line(-2).startPhase(), 1e-12);
    }

    /** Three on 5 − 2·w with unlike weights. */
    @Test
    void weightsDoNotMoveAFreeLineThroughAll() {
        PhaseBands bands =
                new PhaseBands(
                        new double[] {1, 2, 4},
                        new double[] {3, 1, -3},
                        new double[] {1, 7, 2},
                        new double[3]);
        assertEquals(5, new PhaseLine(bands).startPhase(), 1e-12);
    }
}
