package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetFitTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm LAYER = LossTerm.of(Cause.THICKNESS, 190.5);

    private static SetFit fit(double[] theta, LossTerm... terms) {
        return new SetFit(new CauseSet(List.of(terms), null), theta, new double[2][2], 0.25, 10);
    }

    /** Parameters of 3.5 µm and 9 µm² are a layer of 3 µm and a space of 3.5 − 3/2 µm. */
    @Test
    void spaceAndLayerStandForThemselves() {
        SetFit both = fit(new double[] {3.5, 9}, SPACE, LAYER.beyondSpacing());
        SetFit alone = both.alone();
        assertArrayEquals(new double[] {2, 3}, alone.theta(), 1e-12);
        assertEquals(List.of(SPACE, LAYER), alone.set().terms());
        for (double hz = 500; hz < 20_000; hz *= 1.5) {
            assertEquals(both.db(hz), alone.db(hz), 1e-9);
        }
        assertEquals(10, alone.misfit());
        assertSame(alone, alone.alone());
        SetFit space = fit(new double[] {3.5}, SPACE);
        assertSame(space, space.alone());
        // a layer less than absent takes nothing off the space
        SetFit absent = fit(new double[] {3.5, -9}, SPACE, LAYER.beyondSpacing()).alone();
        assertArrayEquals(new double[] {3.5, -9}, absent.theta(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"1.6, 9, true", "1.5, 9, true", "1.4, 9, false", "1.4, 0, true", "2, -1, false"})
    void aSetIsPossibleIfNoCauseIsLessThanAbsent(double sum, double square, boolean possible) {
        SetFit fit = fit(new double[] {sum, square}, SPACE, LAYER.beyondSpacing());
        assertEquals(possible, fit.possible());
        assertEquals(3, fit.freedom());
    }

    /** 0.25 dB beside a curve of 0.55 and −0.05 dB: 0.3 dB over and 0.3 dB under it. */
    @Test
    void whatIsLeftIsARootMeanSquare() {
        SetFit offset = fit(new double[0]);
        LossCurve curve =
                new LossCurve(
                        new double[] {1000, 2000},
                        new double[] {0.55, -0.05},
                        new double[] {0.1, 0.1});
        assertEquals(0.3, offset.residualDb(curve), 1e-12);
        LossCurve uneven =
                new LossCurve(
                        new double[] {1000, 2000},
                        new double[] {0.25, 0.65},
                        new double[] {0.1, 0.1});
        assertEquals(0.4 / Math.sqrt(2), offset.residualDb(uneven), 1e-12);
    }
}
