package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LossTermTest {

    /** Columns of the table are rounded to 0.01 dB; a gap's parameter is its effective length². */
    @Test
    @Source(
            "Wallace 1951 (spacing, thickness); handbook form of gap and azimuth loss: losses-worked")
    void termsFollowTheWorkedTable() {
        ReferenceTable table = ReferenceTable.load("losses-worked");
        for (int row = 0; row < table.size(); row++) {
            double speed = 1000 * Math.rint(table.number(row, "speed") / 4.7625) * 0.047625;
            double hz = table.number(row, "frequency");
            check(table, row, "spacing-1um", LossTerm.of(Cause.SPACING, speed).db(1, hz));
            check(table, row, "thickness-5um", LossTerm.of(Cause.THICKNESS, speed).db(5, hz));
            check(table, row, "gap-1um", LossTerm.of(Cause.GAP, speed).db(1.11 * 1.11, hz));
            double width = speed < 50 ? 600 : 2000;
            double product = width * Math.tan(Math.toRadians(5.0 / 60));
            check(table, row, "azimuth-5min", LossTerm.of(Cause.AZIMUTH, speed).db(product, hz));
        }
    }

    private static void check(ReferenceTable table, int row, String column, double db) {
        assertEquals(table.number(row, column), db, 0.0051, column + " row " + row);
    }

    /** (1 − e^−x)/x = e^−x/2 · sinh(x/2)/(x/2): a layer is a space of half of it and the rest. */
    @Test
    void aLayerIsASpaceOfHalfItsThicknessAndWhatIsBeyond() {
        LossTerm layer = LossTerm.of(Cause.THICKNESS, 190.5);
        LossTerm space = LossTerm.of(Cause.SPACING, 190.5);
        for (double hz = 500; hz < 20_000; hz *= 1.3) {
            double both = space.db(2, hz) + layer.beyondSpacing().db(16, hz);
            assertEquals(layer.db(4, hz), both, 1e-9);
        }
    }

    /** Derivatives against differences, on both sides of 0. */
    @ParameterizedTest
    @MethodSource("terms")
    void slopesAreDerivatives(LossTerm term) {
        for (double share : new double[] {-0.5, 0.4, 2, 5}) {
            double theta = share * term.start();
            double h = 1e-4 * term.start();
            for (double hz : new double[] {3000, 6000, 11_000}) {
                double difference = (term.db(theta + h, hz) - term.db(theta - h, hz)) / (2 * h);
                double scale = Math.max(Math.abs(difference), 1e-6);
                assertEquals(difference, term.slope(theta, hz), 1e-5 * scale, term + " " + share);
            }
        }
    }

    static Stream<LossTerm> terms() {
        return Stream.of(
                LossTerm.of(Cause.SPACING, 95.25),
                LossTerm.of(Cause.GAP, 95.25),
                LossTerm.of(Cause.AZIMUTH, 95.25),
                LossTerm.of(Cause.THICKNESS, 95.25),
                LossTerm.of(Cause.THICKNESS, 95.25).beyondSpacing(),
                LossTerm.apertures(2, 95.25),
                LossTerm.rollOff(1, 0),
                LossTerm.rollOff(2, 48_000),
                LossTerm.rollOff(4, 0));
    }

    /** The share θ of power that is lost at 10 kHz grows with the frequency's 2·order-th power. */
    @ParameterizedTest
    @CsvSource({
        "1, 20000, 5",
        "2, 20000, 17",
        "4, 20000, 257",
        "1, 5000, 1.25",
        "4, 10000, 2",
    })
    void anAmplifierFollowsButterworth(int order, double hz, double power) {
        assertEquals(-10 * Math.log10(power), LossTerm.rollOff(order, 0).db(1, hz), 1e-9);
    }

    /** Half the power is lost where its figure says, bent by the rate or not. */
    @ParameterizedTest
    @CsvSource({"1, 0", "2, 0", "4, 0", "2, 48000"})
    void anAmplifiersFigureIsItsEdge(int order, double rateHz) {
        LossTerm term = LossTerm.rollOff(order, rateHz);
        for (double theta : new double[] {0.05, 1, 3}) {
            double edgeHz = 1 / term.figure(theta);
            assertEquals(-10 * Math.log10(2), term.db(theta, edgeHz), 1e-9);
        }
        assertEquals(1e-4, term.figure(1), 1e-12);
        assertEquals(0, term.figure(0));
    }

    /** tan(π·20/48) / tan(π·10/48) = 4.86370: of second order its fourth power. */
    @Test
    void aDigitalFilterBendsTowardsHalfItsRate() {
        double power = 1 + Math.pow(4.863703, 4);
        LossTerm bent = LossTerm.rollOff(2, 48_000);
        assertEquals(-10 * Math.log10(power), bent.db(1, 20_000), 1e-4);
    }

    /** Where a share below absence would leave no power, or less, it stays at a millionth. */
    @Test
    void noCurveIsFollowedIntoANull() {
        assertEquals(60, LossTerm.rollOff(2, 0).db(-1, 12_000), 1e-9);
        // a gap as long as a wave of 10 kHz at 95.25 mm/s, 9.525 µm
        assertEquals(-60, LossTerm.of(Cause.GAP, 95.25).db(9.525 * 9.525, 10_000), 1e-9);
    }

    /** Two equal apertures that have a length between them lose twice what one of half θ does. */
    @Test
    void twoAperturesShareTheLength() {
        LossTerm one = LossTerm.apertures(1, 95.25);
        LossTerm two = LossTerm.apertures(2, 95.25);
        assertEquals(2 * one.db(8, 9000), two.db(16, 9000), 1e-12);
        // sin(π/2)/(π/2) = 2/π at half a wave
        assertEquals(20 * Math.log10(2 / Math.PI), one.db(25, 9525), 1e-9);
    }

    /** θ is a length, or its square; a gap's effective length is 1.11 times its own. */
    @Test
    void figuresAreLengths() {
        assertEquals(3, LossTerm.of(Cause.SPACING, 95.25).figure(3));
        assertEquals(3, LossTerm.of(Cause.AZIMUTH, 95.25).figure(3));
        assertEquals(3, LossTerm.of(Cause.THICKNESS, 95.25).figure(3));
        assertEquals(3, LossTerm.of(Cause.THICKNESS, 95.25).beyondSpacing().figure(9));
        assertEquals(3, LossTerm.apertures(2, 95.25).figure(9));
        assertEquals(3, LossTerm.of(Cause.GAP, 95.25).figure(9 * 1.11 * 1.11), 1e-12);
        LossTerm beyond = LossTerm.of(Cause.THICKNESS, 95.25).beyondSpacing();
        assertEquals(LossTerm.of(Cause.THICKNESS, 95.25), beyond.alone());
        assertFalse(LossTerm.of(Cause.THICKNESS, 95.25).isBeyondSpacing());
        assertFalse(LossTerm.apertures(2, 95.25).isBeyondSpacing());
        assertTrue(beyond.isBeyondSpacing());
    }

    /** A fit starts from a little of each cause, some tenths of a decibel at 10 kHz. */
    @ParameterizedTest
    @MethodSource("terms")
    void aFitStartsFromALittle(LossTerm term) {
        double db = term.db(term.start(), 10_000);
        boolean rises = term.isBeyondSpacing();
        assertTrue(rises ? db > 0.1 && db < 0.6 : db < -0.1 && db > -0.6, term + ": " + db);
    }

    @Test
    void aShelfHasNoParameter() {
        LossTerm shelf = LossTerm.of(Cause.EQUALISATION, 95.25);
        assertThrows(IllegalStateException.class, () -> shelf.db(1, 10_000));
    }

    /** Where a cause is all but absent its curve is its slope: from either side of 0. */
    @ParameterizedTest
    @MethodSource("terms")
    void nearAbsenceEveryCurveIsStraight(LossTerm term) {
        for (double share : new double[] {-1e-8, -1e-12, 1e-12, 1e-8}) {
            double theta = share * term.start();
            double straight = theta * term.slope(0, 10_000);
            double expected = term.cause() == Cause.AZIMUTH ? 0 : straight;
            assertEquals(expected, term.db(theta, 10_000), 1e-6 * Math.abs(straight) + 1e-14);
        }
    }
}
