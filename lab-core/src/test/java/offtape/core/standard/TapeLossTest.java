package offtape.core.standard;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class TapeLossTest {

    private static final ReferenceTable WORKED = ReferenceTable.load("losses-worked");
    private static final ReferenceTable EXAMPLES = ReferenceTable.load("worked-examples");
    private static final double ROUNDING_DB = 0.005;

    /** The spacing column was computed with 54.6 instead of 54.575: 0.05 % more. */
    @Test
    @Source("Wallace 1951, spacing and thickness")
    void spacingAndThicknessAgreeWithTheTable() {
        for (int row = 0; row < WORKED.size(); row++) {
            double wavelength = wavelength(row);
            check(row, "spacing-0.5um", TapeLoss.spacingDb(0.5, wavelength), 5e-4);
            check(row, "spacing-1um", TapeLoss.spacingDb(1, wavelength), 5e-4);
            check(row, "thickness-5um", TapeLoss.thicknessDb(5, wavelength), 0);
            check(row, "thickness-10um", TapeLoss.thicknessDb(10, wavelength), 0);
        }
    }

    @Test
    @Source("handbook of sound recording, gap loss with factor 1.11")
    void gapAgreesWithTheTable() {
        int seen = 0;
        for (int row = 0; row < WORKED.size(); row++) {
            for (int um : new int[] {1, 3}) {
                String column = "gap-" + um + "um";
                if (WORKED.hasNumber(row, column)) {
                    double gap = um * TapeLoss.EFFECTIVE_GAP_FACTOR;
                    check(row, column, TapeLoss.gapDb(gap, wavelength(row)), 0);
                    seen++;
                }
            }
        }
        assertEquals(54, seen);
    }

    @Test
    @Source("sin(x)/x of a track read at an angle")
    void azimuthAgreesWithTheTable() {
        for (int row = 0; row < WORKED.size(); row++) {
            double width = WORKED.number(row, "speed") < 5 ? 600 : 2000;
            check(row, "azimuth-5min", TapeLoss.azimuthDb(width, 5, wavelength(row)), 0);
            check(row, "azimuth-5min", TapeLoss.azimuthDb(width, -5, wavelength(row)), 0);
        }
    }

    /** Both examples at 16 kHz and 4.7625 cm/s, wavelength 2.977 µm. */
    @Test
    @Source("R. Hess, note on the level of cassettes at 16 kHz")
    void workedExamplesComeOut() {
        double wavelength = TapeLoss.wavelengthUm(47.625, 16000);
        double factor = TapeLoss.EFFECTIVE_GAP_FACTOR;
        example(0, TapeLoss.spacingDb(0.2, wavelength));
        example(
                1,
                TapeLoss.gapDb(1.4 * factor, wavelength)
                        - TapeLoss.gapDb(0.45 * factor, wavelength));
        example(3, TapeLoss.gapDb(1, 2));
        assertTrue(TapeLoss.gapDb(factor, EXAMPLES.number(2, "value")) < -200);
    }

    /** At no distance, gap, depth or angle nothing is lost. */
    @Test
    void nothingIsLostAtNothing() {
        assertEquals(0, TapeLoss.spacingDb(0, 5), 0);
        assertEquals(0, TapeLoss.gapDb(0, 5), 0);
        assertEquals(0, TapeLoss.thicknessDb(0, 5), 0);
        assertEquals(0, TapeLoss.azimuthDb(2000, 0, 5), 0);
    }

    private static double wavelength(int row) {
        // The speeds of the table are rounded, its wavelengths are not.
        double exactSpeed = Math.round(WORKED.number(row, "speed") / 4.7625) * 47.625;
        double wavelength = TapeLoss.wavelengthUm(exactSpeed, WORKED.number(row, "frequency"));
        assertEquals(WORKED.number(row, "wavelength"), wavelength, 5e-5 * wavelength);
        return wavelength;
    }

    private static void check(int row, String column, double actual, double share) {
        double published = WORKED.number(row, column);
        assertPublished(
                published,
                actual,
                ROUNDING_DB,
                share * Math.abs(published),
                column + ", row " + row);
    }

    private static void example(int row, double actual) {
        assertPublished(
                EXAMPLES.number(row, "value"), actual, ROUNDING_DB, 0, EXAMPLES.text(row, "case"));
    }
}
