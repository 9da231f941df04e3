package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RankedTest {

    private static final double[] EIGHT = {7, 0, 3, 1, 6, 2, 5, 4};

    /** Below a quarter of 0 … 7 lie two values. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.1, 0", "0.125, 1", "0.25, 2", "0.75, 6", "0.99, 7", "1, 7"})
    void aShareLiesBelow(double share, double value) {
        assertEquals(value, Ranked.at(share, EIGHT), 0);
    }

    @Test
    void theMedianIsInTheMiddle() {
        assertEquals(3.5, Ranked.median(EIGHT), 0);
        assertEquals(2, Ranked.median(new double[] {100, 2, -50}), 0);
        assertEquals(9, Ranked.median(new double[] {9}), 0);
    }

    @Test
    void quartilesAreFourApart() {
        assertEquals(4, Ranked.middleHalf(EIGHT), 0);
    }

    @Test
    void valuesKeepTheirOrder() {
        double[] values = EIGHT.clone();
        Ranked.at(0.5, values);
        Ranked.median(values);
        assertArrayEquals(EIGHT, values);
    }
}
