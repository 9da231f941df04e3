package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Powers and their errors, by hand. */
class ShareTest {

    /** Powers add, and errors that have nothing to do with each other as √(3² + 4²) = 5. */
    @Test
    void partsAdd() {
        assertEquals(new Share(0.07, 0.05), new Share(0.05, 0.03).plus(new Share(0.02, 0.04)));
    }

    @Test
    void aGainOfPowerActsOnTheErrorToo() {
        assertEquals(new Share(0.5, 0.25), new Share(2, 1).times(0.25));
    }

    /** Both together are 4: known within 2 it is told, not a little beyond. */
    @ParameterizedTest
    @CsvSource({"3, 1, 2, true", "3, 1, 2.001, false", "1, 3, 2, true", "5, -1, 2.001, false"})
    void whatIsKnownWithinHalfOfBothIsTold(
            double power, double other, double uncertainty, boolean told) {
        Share share = new Share(power, uncertainty);
        if (told) {
            assertTrue(share.isToldBeside(new Share(other, 9)));
        } else {
            assertFalse(share.isToldBeside(new Share(other, 9)));
        }
    }

    /**
     * The farther end of the power's range: of 0.0100 ± 0.0075 %² the lower, √0.0025; where nothing
     * is surely there the lower end is 0, and the upper one counts if it lies farther.
     */
    @ParameterizedTest
    @CsvSource({
        "0.01, 0.0075, 0.1, 0.05",
        "0.01, 0.02, 0.1, 0.1",
        "0.01, 0.08, 0.1, 0.2",
        "0, 0.04, 0, 0.2",
        "-0.001, 0.0035, 0, 0.05",
        "-0.01, 0.005, 0, 0"
    })
    void theUncertaintyOfAnRmsReachesToTheFartherEnd(
            double power, double uncertainty, double rms, double reach) {
        Quantity q = new Share(power, uncertainty).rms();
        assertEquals(rms, q.value(), 1e-12);
        assertEquals(reach, q.uncertainty(), 1e-12);
        assertEquals("%", q.unit());
    }
}
