package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.unit.Decibels;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Source("IEC 60386, weighting table")
class Iec60386WeightingTest {

    private static final ReferenceTable TABLE = ReferenceTable.load("wf-weighting-iec60386");

    /** The standard leaves the curve between its points open, not the points. */
    @Test
    void curvePassesThroughTheTable() {
        for (int row = 0; row < TABLE.size(); row++) {
            double f = TABLE.number(row, "frequency");
            assertEquals(TABLE.number(row, "weighting"), Iec60386.weightingDb(f), 1e-12);
        }
    }

    /** 18 dB an octave below: −48 − 18 = −66 dB at 0.05 Hz; 6 dB above: −23 − 6 = −29 at 400 Hz. */
    @Test
    void curveGoesOnBeyondTheTable() {
        assertEquals(-66, Iec60386.weightingDb(0.05), 1e-9);
        assertEquals(-48 - 18 * 5, Iec60386.weightingDb(0.1 / 32), 1e-9);
        assertEquals(-29, Iec60386.weightingDb(400), 1e-9);
        assertEquals(-23 - 6 * 5, Iec60386.weightingDb(200 * 32), 1e-9);
    }

    /**
     * Sines pass the filter as it is used; their rms over whole periods, after 40 s, is compared
     * with the table. The budget is 0.01 dB; the fading of the response at 16 s takes most of it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {500, 1000, 2000})
    void filterFollowsTheTableFrom02To200Hz(double fs) {
        Iec60386 meter = Iec60386.atRate(fs);
        double worst = 0;
        for (int row = 1; row < TABLE.size(); row++) {
            double deviation = gainDb(meter, TABLE.number(row, "frequency"), fs);
            deviation -= TABLE.number(row, "weighting");
            worst = Math.max(worst, Math.abs(deviation));
        }
        System.out.printf("weighting filter at %.0f Hz: worst %.4f dB%n", fs, worst);
        assertTrue(worst < 0.01, "worst deviation " + worst + " dB");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 0.7, 1.3, 3, 5, 8, 14, 30, 50, 80, 150})
    void filterFollowsTheCurveBetweenTheRows(double frequencyHz) {
        double gain = gainDb(Iec60386.atRate(1000), frequencyHz, 1000);
        assertEquals(Iec60386.weightingDb(frequencyHz), gain, 0.01);
    }

    @Test
    void refusesRatesThatDoNotHold200Hz() {
        assertThrows(IllegalArgumentException.class, () -> Iec60386.atRate(499));
        assertThrows(IllegalArgumentException.class, () -> Iec60386.atRate(Double.NaN));
    }

    private static double gainDb(Iec60386 meter, double f, double fs) {
        double period = fs / f;
        int tail = (int) Math.round(Math.max(1, Math.floor(20 * f)) * period);
        double[] out = Signals.weighted(meter, Signals.sine(f, 40, fs));
        double squares = 0;
        for (int i = out.length - tail; i < out.length; i++) {
            squares += out[i] * out[i];
        }
        return Decibels.ofPower(2 * squares / tail);
    }
}
