package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Stream;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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
}
