package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeanDeviationTest {

    /**
     * Hann's weights of four values are 1 ∓ √½: 0.293, 1.707, 1.707, 0.293, of sum 4. One value of
     * 1 at an end has the plain mean 1/4 and the weighted (1 − √½)/4, √½/4 less; in the middle as
     * much more. A line has both alike. 0.0002 is demodulation's own.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 0, 0, 0.25, 0.1767767",
        "0, 0, 0, 1, 0.25, 0.1767767",
        "0, -1, 0, 0, -0.25, 0.1767767",
        "1, 2, 3, 4, 2.5, 0",
        "5, 5, 5, 5, 5, 0"
    })
    void theMeanIsAsSureAsItsWindowsAgree(
            double a, double b, double c, double d, double mean, double apart) {
        MeanDeviation of = new MeanDeviation(4);
        of.next(new double[] {a});
        of.next(new double[] {b, c, d});
        assertEquals(mean, of.value(), 1e-12);
        assertEquals(0.0002 + apart, of.uncertainty(), 1e-7);
    }
}
