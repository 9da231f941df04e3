package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.junit.jupiter.api.Test;

/** χ² up to 14 counts; each fit is a parabola known by hand. */
class CauseRangeTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm LAYER = LossTerm.of(Cause.THICKNESS, 190.5);
    private static final LossTerm GAP = LossTerm.of(Cause.GAP, 190.5);

    private static SetFit fit(double misfit, double[] theta, double variance, LossTerm... terms) {
        double[][] c = new double[theta.length][theta.length];
        for (int i = 0; i < theta.length; i++) {
            c[i][i] = variance;
        }
        return new SetFit(new CauseSet(List.of(terms), null), theta, c, 0, misfit);
    }

    /** A space of 2 ± 0.5 µm at χ² = 10: two deviations to either side are left. */
    private static SetFit space(double theta) {
        return fit(10, new double[] {theta}, 0.25, SPACE);
    }

    private static SetFit nothing(double misfit) {
        return fit(misfit, new double[0], 0, new LossTerm[0]);
    }

    private static void assertRange(double low, double high, SetFit... fits) {
        CauseRange range = CauseRange.of(Cause.SPACING, List.of(fits), 14);
        assertEquals(low, range.low(), 1e-9);
        assertEquals(high, range.high(), 1e-9);
    }

    @Test
    void itIsTheFitsOwnUnlessTheCurveDoesWithoutIt() {
        assertRange(1, 3, space(2), nothing(14.1));
        assertRange(0, 3, space(2), nothing(14));
        assertRange(1, 3, space(2));
        assertNull(CauseRange.of(Cause.GAP, List.of(space(2), nothing(20)), 14));
    }

    /** The lowest and the highest of all sets, whichever has them. */
    @Test
    void everySetCounts() {
        SetFit other = fit(13, new double[] {4, 1}, 0.25, SPACE, GAP);
        SetFit far = fit(15, new double[] {9, 1}, 0.25, SPACE, GAP);
        assertRange(1, 4.5, space(2), other, far, nothing(20));
        assertRange(1, 4.5, other, nothing(20), far, space(2));
    }

    /** A set in which another cause is less than absent does not do without the space. */
    @Test
    void onlyPossibleSetsDoWithoutIt() {
        SetFit absent = fit(11, new double[] {-1}, 0.25, GAP);
        assertRange(1, 3, space(2), absent, nothing(20));
        assertRange(0, 3, space(2), fit(11, new double[] {1}, 0.25, GAP), nothing(20));
    }

    /**
     * A parabola through 0 where nothing misses at χ² = 26: from 0.9 µm at 10 it rises by 16, so by
     * 4 at half the way down.
     */
    @Test
    void whereAParabolaReachesAbsenceTheMissWithoutItCounts() {
        assertRange(0.45, 1.9, space(0.9), nothing(26));
        // of 4 more than at the top it is √(4/5.76) = 5/6 of the way down
        assertRange(0.15, 1.9, space(0.9), nothing(15.76));
        assertRange(0, 1.9, space(0.9));
        assertRange(0, 1.9, space(0.9), nothing(13));
    }

    /** A layer of 2 µm beside a space of 2.5 − 2/2 µm: its own figure is what the way begins at. */
    @Test
    void besideALayerTheSpacesOwnFigureCounts() {
        SetFit both = fit(10, new double[] {2.5, 4}, 4, SPACE, LAYER.beyondSpacing());
        CauseRange range = CauseRange.of(Cause.SPACING, List.of(both, nothing(26)), 14);
        assertEquals(0.75, range.low(), 1e-9);
    }
}
