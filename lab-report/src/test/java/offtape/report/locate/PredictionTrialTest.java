package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /**
     * Student's t for 3, 4 and 5 independent places and the 95.45 % of k = 2; half of it widens
     * what was missed. Places are a second apart, so of a tone of 60 s as much must be left beside
     * the time that reading and wanted moment span. They lie an odd number of half turns apart, so
     * that 2a/√2 is missed.
     */
    @ParameterizedTest
    @Source("JCGM 100:2008, table G.2, degrees of freedom 3, 4 and 5 at 95.45 %")
    @CsvSource({
        "57.001, NaN",
        "57, 3.31",
        "56.2, 3.31",
        "55.8, 2.87",
        "55, 2.65",
        "-57.001, NaN",
        "-57, 3.31",
        "-55.8, 2.87",
    })
    void fewPlacesWidenIt(double apart, double t) {
        double a = 1e-5;
        double[] late = new double[60 * 64 + 1];
        Arrays.setAll(late, k -> a * Math.sin(2 * Math.PI * 2.5 * k / 64));
        PredictionTrial trial = new PredictionTrial(new TonePhase.Course(30, 1 / 64.0, late, 0));
        double sigma = trial.sigma(List.of(at(2 + apart)), new double[] {1}, 2);
        double wanted = t / 2 * Math.sqrt(2) * a;
        assertEquals(wanted, sigma, Double.isNaN(t) ? 0 : 0.015 * wanted);
    }

    /**
     * A third of a step apart: 2·sin(π·0.5·0.01667) of the peak, between the values of the tone.
     */
    @Test
    void theToneIsKnownBetweenItsValues() {
        double a = 1e-5;
        double[] late = new double[1200];
        Arrays.setAll(late, k -> a * Math.sin(Math.PI * 0.05 * k));
        PredictionTrial trial = new PredictionTrial(new TonePhase.Course(30, 0.05, late, 0));
        double missed = 2 * Math.sin(Math.PI * 0.5 * 0.05 / 3) * a / Math.sqrt(2);
        double sigma = trial.sigma(List.of(at(0.05 / 3)), new double[] {1}, 0);
        assertEquals(1.02 * missed, sigma, 0.02 * missed);
    }
}
