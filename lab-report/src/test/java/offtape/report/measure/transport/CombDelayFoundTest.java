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

    /** The delay of the programme bounds that of the heads. */
    @Test
    void aDelayIsFoundUpToTheLongestPossible() {
        assertTrue(CombDelay.find(TwoHeads.heard(), 0.11).isPresent());
    }
}
