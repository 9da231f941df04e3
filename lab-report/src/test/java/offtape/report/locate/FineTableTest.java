package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.dsp.SincInterpolator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FineTableTest {

    /** A sine between its samples, by its formula; at an eighth of the rate within −70 dB. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.05, 0.125})
    void aSineIsReadBetweenItsSamples(double turnsASample) {
        double[] sine = new double[400];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = Math.sin(2 * Math.PI * turnsASample * i);
        }
        FineTable table = FineTable.of(sine);
        double worst = 0;
        for (double place = 50; place < 350; place += 0.137) {
            double right = Math.sin(2 * Math.PI * turnsASample * place);
            worst = Math.max(worst, Math.abs(table.at(place) - right));
        }
        assertTrue(worst < Math.pow(10, -70 / 20.0), "worst " + worst);
    }

    @Test
    void beyondTheEndsIsSilence() {
        FineTable table = FineTable.of(new double[] {1, 1, 1, 1});
        assertEquals(0, table.at(-3), 0);
        assertEquals(0, table.at(9), 0);
    }

    /** A cubic needs a quarter before and two behind; at quarters it goes through them. */
    @Test
    void toItsEndsItIsTheBandLimitedValue() {
        double[] samples = {0.3, -0.5, 0.9, 0.4};
        FineTable table = FineTable.of(samples);
        for (double place : new double[] {0.25, 0.5, 1, 2.75, 3, 3.25}) {
            assertEquals(SincInterpolator.at(samples, place), table.at(place), 1e-15, "" + place);
        }
        assertEquals(0, table.at(0.24), 0);
        assertEquals(0, table.at(3.5), 0);
    }
}
