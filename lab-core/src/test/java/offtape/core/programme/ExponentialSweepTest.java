package offtape.core.programme;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;
import org.apache.commons.math3.analysis.differentiation.FiniteDifferencesDifferentiator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExponentialSweepTest {

    /**
     * The n-th harmonic is the sweep itself, L·ln n ahead: it passes n·f when the sweep is at f.
     */
    @Test
    @Source({"Farina 2000", "Novak et al. 2015, J. Audio Eng. Soc. 63(10) 786-798"})
    void harmonicsLeadAsInTheTable() {
        ReferenceTable table = ReferenceTable.load("sweep-sync");
        for (int row = 0; row < table.size(); row++) {
            double low = table.number(row, "startFrequency");
            ExponentialSweep sweep =
                    new ExponentialSweep(
                            low, table.number(row, "endFrequency"), table.number(row, "duration"));
            // The duration is rounded to 1e-6 s, which moves L by less than 1/6 of that.
            assertPublished(
                    table.number(row, "rate"), sweep.growthSeconds(), 5e-7, 1e-7, "row " + row);
            for (int n = 2; n <= 5; n++) {
                double lead = sweep.timeSeconds(n * 3 * low) - sweep.timeSeconds(3 * low);
                assertPublished(
                        table.number(row, "lead-" + n), lead, 5e-7, 2e-7, n + ", row " + row);
            }
        }
    }

    /** The frequency is the slope of the phase over 2π, differentiated by Commons Math. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 3, 6, 9, 11.5})
    void frequencyIsTheSlopeOfThePhase(double t) {
        ExponentialSweep sweep = new ExponentialSweep(16, 22_000, 12);
        DerivativeStructure slope =
                new FiniteDifferencesDifferentiator(5, 1e-4)
                        .differentiate(sweep::phaseRadians)
                        .value(new DerivativeStructure(1, 1, 0, t));
        double hz = slope.getPartialDerivative(1) / (2 * Math.PI);
        assertEquals(hz, sweep.frequencyHz(t), 1e-6 * hz);
    }

    /** Equal times multiply the frequency alike: half way it is √(16 · 22000) = 593.3 Hz. */
    @Test
    void growsGeometrically() {
        ExponentialSweep sweep = new ExponentialSweep(16, 22_000, 12);
        assertEquals(16, sweep.frequencyHz(0), 1e-12);
        assertEquals(Math.sqrt(16 * 22_000), sweep.frequencyHz(6), 1e-9);
        assertEquals(22_000, sweep.frequencyHz(12), 1e-8);
        assertEquals(6, sweep.timeSeconds(Math.sqrt(16 * 22_000)), 1e-12);
        assertEquals(0, sweep.phaseRadians(0), 0);
    }

    @Test
    void lastsAsLongAsItsCue() {
        Cue.Sweep cue = new Cue.Sweep("s", ChannelSet.BOTH, 100, 88_200, 20, 20_000, -20);
        assertEquals(new ExponentialSweep(20, 20_000, 2), ExponentialSweep.of(cue, 44_100));
    }
}
