package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class SynchronisedSweepTest {

    private static final double ROUNDING_SECONDS = 5e-7;

    @Test
    @Source({"Farina 2000", "Novak et al. 2015, J. Audio Eng. Soc. 63(10) 786-798"})
    void lengthAndHarmonicsAgreeWithTheTable() {
        ReferenceTable table = ReferenceTable.load("sweep-sync");
        for (int row = 0; row < table.size(); row++) {
            SynchronisedSweep sweep =
                    SynchronisedSweep.near(
                            table.number(row, "startFrequency"),
                            table.number(row, "endFrequency"),
                            table.number(row, "wantedDuration"));
            assertEquals(table.number(row, "cycles"), sweep.cycles(), 1e-9);
            seconds(table, row, "rate", sweep.rateSeconds());
            seconds(table, row, "duration", sweep.durationSeconds());
            for (int harmonic = 2; harmonic <= 5; harmonic++) {
                seconds(table, row, "lead-" + harmonic, sweep.leadSeconds(harmonic));
            }
        }
    }

    /** L = 2 s from 100 Hz: after 2·ln 3 s it passes 300 Hz, where its third harmonic began. */
    @Test
    void timeAndFrequencyAreInverse() {
        SynchronisedSweep sweep = new SynchronisedSweep(100, 10000, 2);
        assertEquals(2 * Math.log(3), sweep.secondsAt(300), 1e-12);
        assertEquals(300, sweep.frequencyHz(2 * Math.log(3)), 1e-10);
        assertEquals(sweep.secondsAt(300), sweep.leadSeconds(3), 1e-12);
        assertEquals(0, sweep.leadSeconds(1), 0);
    }

    @Test
    void refusesSweepsThatDoNotRise() {
        assertThrows(IllegalArgumentException.class, () -> new SynchronisedSweep(100, 100, 1));
        assertThrows(IllegalArgumentException.class, () -> new SynchronisedSweep(0, 100, 1));
        assertThrows(IllegalArgumentException.class, () -> new SynchronisedSweep(1, 100, 0));
    }

    private static void seconds(ReferenceTable table, int row, String column, double actual) {
        assertPublished(
                table.number(row, column), actual, ROUNDING_SECONDS, 0, column + ", row " + row);
    }
}
