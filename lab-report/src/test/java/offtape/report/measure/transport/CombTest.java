package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Heads 0.1 s apart, known to 1 ms: zeros at 10 Hz and its multiples. */
class CombTest {

    private static final Comb COMB = new Comb(0.1, 0.001);

    /** |1 − exp(−iφ)|² = 2 − 2·cos φ with φ = 2π·f·τ. */
    @ParameterizedTest
    @CsvSource({"0, 0", "2.5, 2", "5, 4", "7.5, 2", "10, 0", "12.5, 2", "15, 4", "1.6667, 1"})
    void powerIsThatOfTheDifference(double hz, double power) {
        assertEquals(power, COMB.power(hz), 1e-4);
        assertEquals(2 - 2 * Math.cos(2 * Math.PI * hz * 0.1), COMB.power(hz), 1e-12);
    }

    /** exp(−2πi·f·τ) turns by 2π·f·σ: 0.0628 rad at 10 Hz. */
    @Test
    void varianceGrowsWithTheSquareOfTheRate() {
        assertEquals(0.0039478, COMB.variance(10), 1e-7);
        assertEquals(4 * 0.0039478, COMB.variance(20), 1e-6);
    }

    /**
     * −d ln(4·sin²)/dτ = −2π·f·cot(π·f·τ): at 2.5 Hz, where the cotangent is 1, −15.708; at 7.5 Hz,
     * where it is −1, three times as much with the other sign; none at a top of the comb.
     */
    @ParameterizedTest
    @CsvSource({"2.5, -15.708", "5, 0", "7.5, 47.124"})
    void slopeIsTheDerivativeOfTheLogarithm(double hz, double slope) {
        assertEquals(slope, COMB.slope(hz, 0), 1e-3);
        double h = 1e-6;
        double after = Math.log(new Comb(0.1 + h, 0).power(hz));
        double before = Math.log(new Comb(0.1 - h, 0).power(hz));
        assertEquals(-(after - before) / (2 * h), COMB.slope(hz, 0), 1e-5);
    }

    /** With as much again as the power of 2 held back, half of the slope is left. */
    @Test
    void whatIsNotUndoneDoesNotChange() {
        assertEquals(-15.708 / 2, COMB.slope(2.5, 2), 1e-3);
    }
}
