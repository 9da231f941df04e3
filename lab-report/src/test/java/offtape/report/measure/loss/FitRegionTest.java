package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ellipses whose borders are known by hand. χ² of the fit is 10, the limit 14: reach is 2σ. */
class FitRegionTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm LAYER = LossTerm.of(Cause.THICKNESS, 190.5);
    private static final LossTerm GAP = LossTerm.of(Cause.GAP, 190.5);
    private static final LossTerm EDGE = LossTerm.rollOff(2, 0);

    private static SetFit fit(double[] theta, double[][] covariance, LossTerm... terms) {
        return new SetFit(new CauseSet(List.of(terms), null), theta, covariance, 0, 10);
    }

    private static double[] range(SetFit fit, int term) {
        return new FitRegion(fit, 14).figures(term);
    }

    /** σ = 0.5 µm. */
    @Test
    void oneCauseReachesTwoDeviations() {
        double[][] variance = {{0.25}};
        assertArrayEquals(
                new double[] {1, 3}, range(fit(new double[] {2}, variance, SPACE), 0), 1e-12);
        assertArrayEquals(
                new double[] {0, 1.4}, range(fit(new double[] {0.4}, variance, SPACE), 0), 1e-12);
        assertArrayEquals(
                new double[] {0, 0.6}, range(fit(new double[] {-0.4}, variance, SPACE), 0), 1e-12);
        assertNull(range(fit(new double[] {-1.1}, variance, SPACE), 0));
        // of a gap θ = (1.11 · g)², from 0.4642 to 2.4642: g from 0.6138 to 1.4142 µm
        assertArrayEquals(
                new double[] {Math.sqrt(0.4642) / 1.11, Math.sqrt(2)},
                range(fit(new double[] {1.4642}, variance, GAP), 0),
                1e-12);
        // a layer alone is a length as it is
        assertArrayEquals(
                new double[] {1, 3}, range(fit(new double[] {2}, variance, LAYER), 0), 1e-12);
    }

    @Test
    void atTheLimitOnlyTheFitIsLeftAndBeyondNothing() {
        SetFit fit = fit(new double[] {2}, new double[][] {{0.25}}, SPACE);
        assertArrayEquals(new double[] {2, 2}, new FitRegion(fit, 10).figures(0), 1e-12);
        assertNull(new FitRegion(fit, 9.99).figures(0));
        assertNull(new FitRegion(fit, Double.NaN).figures(0));
    }

    /**
     * A space of 2 ± 1 µm beside a gap below absence, θ = −0.1: where more space means less gap
     * (−1/2 along), the gap is there up to 2 − 0.2 = 1.8 µm only; where it means more, from 2.2 µm
     * on; where they do not hang together, never.
     */
    @ParameterizedTest
    @CsvSource({"-0.5, 0, 1.8", "0.5, 2.2, 4"})
    void noOtherCauseMayBeLessThanAbsent(double covariance, double low, double high) {
        double[][] c = {{1, covariance}, {covariance, 1}};
        double[] theta = {2, -0.1};
        assertArrayEquals(new double[] {low, high}, range(fit(theta, c, SPACE, GAP), 0), 1e-12);
        double[][] swapped = {{1, covariance}, {covariance, 1}};
        assertArrayEquals(
                new double[] {low, high},
                range(fit(new double[] {-0.1, 2}, swapped, GAP, SPACE), 1),
                1e-12);
    }

    @Test
    void aCauseThatIsAbsentWhateverTheOtherDoesRefusesTheSet() {
        double[][] apart = {{1, 0}, {0, 1}};
        assertNull(range(fit(new double[] {2, -0.1}, apart, SPACE, GAP), 0));
        assertArrayEquals(
                new double[] {0, 4}, range(fit(new double[] {2, 0}, apart, SPACE, GAP), 0), 1e-12);
        // by −0.5 along, −2.1 of a gap would take the space 4.2 µm down, which is not there
        double[][] along = {{1, -0.5}, {-0.5, 1}};
        assertNull(range(fit(new double[] {2, -2.1}, along, SPACE, GAP), 0));
        // and 0.5 along 4.2 µm up, beyond its reach
        double[][] other = {{1, 0.5}, {0.5, 1}};
        assertNull(range(fit(new double[] {2, -1.1}, other, SPACE, GAP), 0));
    }

    /**
     * s + δ/2 = 5 ± 0.1 µm and δ² = 4 ± 1 µm²: δ from √2 to √6 µm. s is 5 ± 0.2·√(1 − q²) less √(4
     * + 2q)/2 (q from −1 to 1), whose extremes are 3.6950 and 4.3471 µm (found on a fine grid of
     * angles). Places gone through lie within 1/32 of a border.
     */
    @Test
    void aSpaceBesideALayerIsWhatIsLeftOfTheSum() {
        double[][] c = {{0.01, 0}, {0, 1}};
        SetFit fit = fit(new double[] {5, 4}, c, SPACE, LAYER.beyondSpacing());
        assertArrayEquals(new double[] {3.6950, 4.3471}, range(fit, 0), 2e-3);
        assertArrayEquals(new double[] {Math.sqrt(2), Math.sqrt(6)}, range(fit, 1), 1e-9);
    }

    /** With ± 0.2 µm and a correlation of 0.6 the same grid gives 3.6799 and 4.3202 µm. */
    @Test
    void sumAndLayerHangTogether() {
        double[][] c = {{0.04, 0.12}, {0.12, 1}};
        SetFit fit = fit(new double[] {5, 4}, c, SPACE, LAYER.beyondSpacing());
        assertArrayEquals(new double[] {3.6799, 4.3202}, range(fit, 0), 4e-3);
        assertArrayEquals(new double[] {Math.sqrt(2), Math.sqrt(6)}, range(fit, 1), 1e-9);
        // four times the covariance and a quarter of the room are the same region
        double[][] wide = {{0.16, 0.48}, {0.48, 4}};
        SetFit near = fit(new double[] {5, 4}, wide, SPACE, LAYER.beyondSpacing());
        FitRegion region = new FitRegion(near, 11);
        assertArrayEquals(new double[] {3.6799, 4.3202}, region.figures(0), 4e-3);
        assertArrayEquals(new double[] {Math.sqrt(2), Math.sqrt(6)}, region.figures(1), 1e-9);
    }

    /**
     * A sum of 1 ± 0.1 µm holds no layer beyond 2.3031 µm, where the space is 0 (the same grid); δ²
     * of 0.5 ± 1 µm² begins at 0, where the space is 1 + 0.1 · √(4 − 0.25) at most; the least,
     * 0.1530 µm, is from the grid.
     */
    @Test
    void neitherIsLessThanAbsent() {
        double[][] c = {{0.01, 0}, {0, 1}};
        SetFit thick = fit(new double[] {1, 4}, c, SPACE, LAYER.beyondSpacing());
        assertArrayEquals(new double[] {0, 0.3471}, range(thick, 0), 0.02);
        assertArrayEquals(new double[] {Math.sqrt(2), 2.3031}, range(thick, 1), 0.02);
        SetFit thin = fit(new double[] {1, 0.5}, c, SPACE, LAYER.beyondSpacing());
        assertArrayEquals(new double[] {0.1530, 1 + 0.1 * Math.sqrt(3.75)}, range(thin, 0), 2e-3);
        assertArrayEquals(new double[] {0, Math.sqrt(2.5)}, range(thin, 1), 1e-9);
        SetFit none = fit(new double[] {-0.3, 0.5}, c, SPACE, LAYER.beyondSpacing());
        assertNull(range(none, 0));
        SetFit negative = fit(new double[] {1, -2.1}, c, SPACE, LAYER.beyondSpacing());
        assertNull(range(negative, 1));
    }

    /**
     * An amplifier beside both, θ = 1 ± 0.5 of second order, with nothing in common: 2σ at the
     * middle of the others, 0 to 2, so that its edge is at least 10 kHz / 2^(1/4).
     */
    @Test
    void anotherCauseHasWhatTheyLeave() {
        double[][] c = {{0.01, 0, 0}, {0, 1, 0}, {0, 0, 0.25}};
        LossTerm[] terms = {SPACE, LAYER.beyondSpacing(), EDGE};
        double[] edge = range(fit(new double[] {5, 4, 1}, c, terms), 2);
        assertArrayEquals(new double[] {0, Math.pow(2, 0.25) / 10_000}, edge, 1e-12);
        double[] sure = range(fit(new double[] {5, 4, 2}, c, terms), 2);
        assertArrayEquals(new double[] {1e-4, Math.pow(3, 0.25) / 10_000}, sure, 1e-12);
        // 0.4 below absence it is there within 2σ of 0.5 only where the others leave enough
        double[] absent = range(fit(new double[] {5, 4, -1.1}, c, terms), 0);
        assertNull(absent);
        assertArrayEquals(
                range(
                        fit(
                                new double[] {5, 4},
                                new double[][] {{0.01, 0}, {0, 1}},
                                SPACE,
                                LAYER.beyondSpacing()),
                        0),
                range(fit(new double[] {5, 4, 3}, c, terms), 0),
                1e-12);
    }

    /**
     * If the amplifier follows the layer, θ = 2 + (δ² − 4)/2 exactly but for a variance of 0.01, it
     * is 1 to 3 where δ² is 2 to 6, at the ends of the ellipse; if it follows the sum, θ = 2 + 5 ·
     * (sum − 5), the same.
     */
    @Test
    void anotherCauseFollowsThem() {
        LossTerm[] terms = {SPACE, LAYER.beyondSpacing(), EDGE};
        double[][] layer = {{0.01, 0, 0}, {0, 1, 0.5}, {0, 0.5, 0.2501}};
        double[][] sum = {{0.01, 0, 0.05}, {0, 1, 0}, {0.05, 0, 0.2501}};
        for (double[][] c : List.of(layer, sum)) {
            double[] edge = range(fit(new double[] {5, 4, 2}, c, terms), 2);
            double[] wanted = {1e-4, Math.pow(3, 0.25) / 10_000};
            assertArrayEquals(wanted, edge, 3e-8);
        }
        // two that follow both
        double[][] both = {{0.01, 0.06, 0.08}, {0.06, 1, 0.6}, {0.08, 0.6, 1}};
        double[] edge = range(fit(new double[] {5, 4, 4}, both, terms), 2);
        assertArrayEquals(
                new double[] {Math.pow(2, 0.25) / 10_000, Math.pow(6, 0.25) / 10_000}, edge, 1e-6);
    }
}
