package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Factors of speed by which a tone may be one of a list. */
class SpeedGuessTest {

    /** Both ends of a range belong to it; heard over listed. */
    @ParameterizedTest
    @CsvSource({"900, true", "899, false", "1100, true", "1101, false", "1000, true", "450, false"})
    void factorsLieWithinARange(double hz, boolean counts) {
        assertEquals(
                counts ? List.of(hz / 1000) : List.of(),
                SpeedGuess.of(new double[] {hz}, new double[] {1000}, SpeedGuess.RIGHT));
    }

    /** 1.02, 1.0249 and 1.021 are to be told apart from 0.3 % on: the third is the first. */
    @Test
    void factorsThatAreAlikeAreOne() {
        List<Double> factors =
                SpeedGuess.of(
                        new double[] {1020, 2049.8, 510.5},
                        new double[] {1000, 2000, 500},
                        SpeedGuess.RIGHT);
        assertEquals(2, factors.size());
        assertEquals(1.02, factors.get(0), 1e-12);
        assertEquals(1.0249, factors.get(1), 1e-12);
    }

    @Test
    void halfAndDoubleAreRangesOfTheirOwn() {
        double[] heard = {500};
        double[] list = {250, 500, 1000};
        assertEquals(List.of(2.0), SpeedGuess.of(heard, list, SpeedGuess.DOUBLE));
        assertEquals(List.of(0.5), SpeedGuess.of(heard, list, SpeedGuess.HALF));
    }
}
