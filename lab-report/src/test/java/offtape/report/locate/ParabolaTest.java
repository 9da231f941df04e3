package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ParabolaTest {

    @Test
    void constantSlopeAndBendAreTakenOut() {
        double[] y = new double[50];
        Arrays.setAll(y, k -> 3 - 0.2 * k + 0.01 * k * k);
        assertArrayEquals(new double[50], Parabola.removed(y), 1e-10);
    }

    /** Of x³ over −1 to 1 the part 3x/5 is a slope (Legendre); what is left at the end is 0.4. */
    @Test
    void whatNoParabolaHoldsIsLeft() {
        double[] y = new double[2001];
        Arrays.setAll(y, k -> Math.pow(k / 1000.0 - 1, 3));
        double[] left = Parabola.removed(y);
        assertEquals(0.4, left[2000], 0.002);
        assertEquals(-0.4, left[0], 0.002);
        assertEquals(0, left[1000], 1e-9);
        assertEquals(Math.pow(0.5, 3) - 0.6 * 0.5, left[1500], 0.002);
    }
}
