package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The morphological closing, by hand. */
class ValleysTest {

    private static double[] values(String spaced) {
        return Arrays.stream(spaced.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    /**
     * A valley is filled to its lower rim; a hill, a slope and a step stay; beyond an end there is
     * nothing, so that a valley there has one rim. Of two valleys parted by a low hill the hill is
     * the rim of both.
     */
    @ParameterizedTest
    @CsvSource({
        "5 5 1 5 5 5, 3, 5 5 5 5 5 5",
        "5 5 1 3 3 3, 3, 5 5 3 3 3 3",
        "3 3 1 5 5 5, 3, 3 3 3 5 5 5",
        "1 1 5 1 1 1, 3, 1 1 5 1 1 1",
        "1 2 3 4 5 6, 3, 2 2 3 4 5 6",
        "5 5 5 1 1 1, 3, 5 5 5 1 1 1",
        "1 5 5 5 5 2, 3, 5 5 5 5 5 5",
        "5 5 1 2 1 5 5, 3, 5 5 2 2 2 5 5",
        "-5 -5 -9 -5 -5 -5, 3, -5 -5 -5 -5 -5 -5",
        "4, 3, 4"
    })
    void valleysAreFilledToTheirLowerRim(String curve, int width, String filled) {
        assertArrayEquals(values(filled), Valleys.filled(values(curve), width));
    }

    /** Twice half the width is filled, one more is not; the least half is one sample. */
    @ParameterizedTest
    @CsvSource({
        "6, 6, true",
        "6, 7, false",
        "7, 6, true",
        "7, 7, false",
        "1, 2, true",
        "1, 3, false"
    })
    void aValleyOfTheWidthIsFilled(int width, int valley, boolean isFilled) {
        double[] level = DoubleStream.generate(() -> 2).limit(20).toArray();
        double[] curve = level.clone();
        IntStream.range(9, 9 + valley).forEach(i -> curve[i] = -1);
        assertArrayEquals(isFilled ? level : curve, Valleys.filled(curve, width));
    }
}
