package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Predictions tried on lateness that is known. */
class PredictionTrialTest {

    private static final double STEP_S = 0.01;

    private static TonePhase.Course wow(double seconds, double hz, double peak) {
        double[] late = new double[(int) (seconds / STEP_S)];
        Arrays.setAll(late, k -> peak * Math.sin(2 * Math.PI * hz * k * STEP_S));
        return new TonePhase.Course(30, STEP_S, late, 0);
    }

    private static PhaseReading at(double seconds) {
        return new PhaseReading(seconds, 0, 1000, 0, 0);
    }

    /**
     * A swing of 2 Hz taken as it stood 0.1 s later misses 2·sin(π·2·0.1) = 1.176 of its peak at
     * most, 0.831 of it rms. The tone of 60 s has 59 independent places: Student's t there is 1 %
     * over 2.
     */
    @Test
    void missesWhatTheMotionDoesMeanwhile() {
        double sigma =
                new PredictionTrial(wow(60, 2, 1e-5)).sigma(List.of(at(0.1)), new double[] {1}, 0);
        double missed = 2 * Math.sin(Math.PI * 0.2) / Math.sqrt(2) * 1e-5;
        assertEquals(1.02 * missed, sigma, 0.02 * missed);
    }

    /** Two readings that surround the wanted time by a quarter of a turn meet a sine's middle. */
    @Test
    void aPredictionThatKnowsTheMotionMissesNothing() {
        double sigma =
                new PredictionTrial(wow(60, 2, 1e-5))
                        .sigma(List.of(at(0.5), at(1)), new double[] {0.5, 0.5}, 0);
        assertEquals(0, sigma, 2e-8);
    }

    @Test
    void aShortToneTellsNothing() {
        double sigma =
                new PredictionTrial(wow(3, 2, 1e-5)).sigma(List.of(at(1)), new double[] {1}, 0);
        assertTrue(Double.isNaN(sigma));
    }
}
