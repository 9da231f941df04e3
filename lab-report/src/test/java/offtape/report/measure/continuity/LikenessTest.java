package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A bump that is looked for in a longer series. */
class LikenessTest {

    /** Its mean is 1; what it differs from that, −1, 0, 2, 0, −1, has 6 as its sum of squares. */
    private static final double[] BUMP = {0, 1, 3, 1, 0};

    private static double[] around(int at, double base, double size) {
        double[] x = new double[20];
        for (int i = 0; i < x.length; i++) {
            x[i] = base + (i >= at && i < at + BUMP.length ? size * BUMP[i - at] : 0);
        }
        return x;
    }

    /** Whatever its size and what it stands on; the same on both sides of it. */
    @ParameterizedTest
    @CsvSource({"1, 0, 1", "7, 0, 0.01", "7, 5, 2", "14, -3, 40"})
    void aCopyIsFoundWhereItIs(int at, double base, double size) {
        Likeness likeness = new Likeness(BUMP, around(at, base, size));
        assertEquals(at, likeness.best(0.999).orElseThrow(), 1e-9);
    }

    /** At its first or last place the best may lie beyond. */
    @ParameterizedTest
    @ValueSource(ints = {0, 15})
    void whatMayLieBeyondTheEndsIsNotTold(int at) {
        assertTrue(new Likeness(BUMP, around(at, 0, 1)).best(0.5).isEmpty());
    }

    /** A hollow is the opposite of a bump. */
    @Test
    void theOppositeIsNotAlike() {
        assertTrue(new Likeness(BUMP, around(7, 0, -1)).best(0.97).isEmpty());
    }

    /**
     * 0, 2, 3, 1, 0 has the mean 1.2; what it differs from that times −1, 0, 2, 0, −1 is 1.2 + 3.6
     * + 1.2 = 6, its squares are 14 − 5 · 1.44 = 6.8: 6 / √(6 · 6.8) = 0.9393.
     */
    @ParameterizedTest
    @CsvSource({"0.939, true", "0.940, false"})
    void likenessIsPearsonsCoefficient(double least, boolean found) {
        double[] x = new double[20];
        System.arraycopy(new double[] {0, 2, 3, 1, 0}, 0, x, 7, 5);
        assertEquals(found, new Likeness(BUMP, x).best(least).isPresent());
    }

    /** Between two steps: a bump of Gauss's shape, six steps wide. */
    @ParameterizedTest
    @ValueSource(doubles = {30, 30.25, 30.5, 29.8})
    void thePlaceLiesBetweenSteps(double at) {
        double[] shape = IntStream.range(0, 40).mapToDouble(i -> gauss(i - 20)).toArray();
        double[] x = IntStream.range(0, 100).mapToDouble(i -> 2 + gauss(i - 20 - at)).toArray();
        assertEquals(at, new Likeness(shape, x).best(0.97).orElseThrow(), 0.01);
    }

    private static double gauss(double steps) {
        return Math.exp(-steps * steps / (2 * 6 * 6));
    }

    /**
     * A bump of size s on 1 has squares of about 5 and varies by 6·s²: more than a millionth of
     * them for s over 9.1e-4. A level series has no likeness to anything, nor has a level shape.
     */
    @Test
    void whatIsLevelHasNoShape() {
        assertTrue(new Likeness(BUMP, around(7, 1, 8e-4)).best(0.5).isEmpty());
        assertEquals(7, new Likeness(BUMP, around(7, 1, 1e-3)).best(0.5).orElseThrow(), 1e-6);
        assertTrue(new Likeness(BUMP, new double[20]).best(0).isEmpty());
        assertTrue(new Likeness(new double[] {2, 2, 2}, around(7, 0, 1)).best(0).isEmpty());
    }
}
