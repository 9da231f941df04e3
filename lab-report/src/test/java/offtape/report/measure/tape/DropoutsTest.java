package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Jumps of a level. */
class DropoutsTest {

    /** A level that goes up and down by so much, and one value that is put in. */
    private static double[] level(double off, int at, double value) {
        double[] level = new double[20];
        for (int i = 0; i < level.length; i++) {
            level[i] = 2 + (i % 2 == 0 ? off : -off);
        }
        level[at] = value;
        return level;
    }

    private static int[] marked(double[] level, int spread) {
        boolean[] in = Dropouts.in(level, spread);
        return IntStream.range(0, in.length).filter(i -> in[i]).toArray();
    }

    /**
     * A quiet level of 2 may move by 0.084 of that. One that moves by ± 0.1 has its quartiles 0.2
     * apart, 0.2/1.349 is its standard deviation, and five of them are 0.741.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 2.167, false", "0, 2.169, true", "0, 1.833, false", "0, 1.831, true",
        "0.1, 2.63, false", "0.1, 2.85, true", "0.1, 1.37, false", "0.1, 1.15, true",
        "0, 0, true"
    })
    void jumpsStandOutOfTheScatter(double off, double value, boolean jumps) {
        assertArrayEquals(jumps ? new int[] {7} : new int[0], marked(level(off, 7, value), 0));
    }

    /** What lies within the spread to either side is spoilt too, as far as there is anything. */
    @ParameterizedTest
    @CsvSource({"7, 5 6 7 8 9", "0, 0 1 2", "1, 0 1 2 3", "19, 17 18 19", "18, 16 17 18 19"})
    void aJumpSpoilsItsNeighbours(int at, String which) {
        int[] wanted =
                IntStream.of(
                                java.util.Arrays.stream(which.split(" "))
                                        .mapToInt(Integer::parseInt)
                                        .toArray())
                        .toArray();
        assertArrayEquals(wanted, marked(level(0, at, 1), 2));
    }

    /**
     * Eight values of which one jumps: the others, 2.03 and 1.97 about 2, are held against their
     * mean, and made as strong as eight by √(8/7).
     */
    @Test
    void jumpsAreBridgedWithoutLosingPower() {
        double[] level = {2.03, 2, 1.97, 5, 2, 2.03, 1.97, 2};
        double[] about = Dropouts.bridged(level, 0);
        double more = Math.sqrt(8 / 7.0);
        double[] wanted = {0.03 * more, 0, -0.03 * more, 0, 0, 0.03 * more, -0.03 * more, 0};
        assertArrayEquals(wanted, about, 1e-12);
    }

    /** Where everything is spoilt, or there is nothing, nothing is left. */
    @Test
    void nothingIsLeftOfNothing() {
        assertEquals(0, Dropouts.bridged(new double[0], 3).length);
        assertArrayEquals(
                new double[7], Dropouts.bridged(new double[] {1, 1, 1, 9, 1, 1, 1}, 5), 0);
    }
}
