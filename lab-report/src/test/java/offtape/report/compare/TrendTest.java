package offtape.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.compare.Change.Direction;
import offtape.report.headline.Aim;
import org.junit.jupiter.api.Test;

class TrendTest {

    /** One each hundred days. */
    private static List<Course.Point> points(double uncertainty, double... values) {
        List<Course.Point> points = new ArrayList<>();
        for (double v : values) {
            points.add(
                    new Course.Point(100.0 * points.size(), Quantity.known(v, "dB", uncertainty)));
        }
        return points;
    }

    /**
     * 1, 2, 3, 4 dB on days 0, 100, 200, 300 rise by 0.01 dB a day, 3.6525 a year, without scatter.
     * The days' squares about their mean of 150 are 50000, so 0.01 dB of each value make
     * 0.01/√50000 a day, 0.016334 a year.
     */
    @Test
    void aLineIsFoundWithWhatItsValuesAreKnownWithin() {
        Trend trend = Trend.of(points(0.01, 1, 2, 3, 4), Aim.LOWER);
        assertEquals(3.6525, trend.perYear().value(), 1e-9);
        assertEquals(0.016334, trend.perYear().uncertainty(), 1e-6);
        assertEquals(Direction.WORSE, trend.direction());
        assertEquals(Direction.BETTER, Trend.of(points(0.01, 1, 2, 3, 4), Aim.HIGHER).direction());
        assertEquals(
                Direction.BETTER,
                Trend.of(points(0.01, -4, -3, -2, -1), Aim.NEARER_ZERO).direction());
    }

    /**
     * 0, 1, 0, 1 dB: the line rises by 0.002 dB a day (products 100 over squares 50000), the rests
     * are −0.2, 0.6, −0.6, 0.2 with squares of 0.8 in sum, so the slope's standard error is
     * √(0.8/2/50000) = 0.0028284 a day; times 4.3027 (Student's t, two degrees of freedom) and
     * 365.25 it is 4.445 a year.
     */
    @Test
    void scatterMakesATrendUnclear() {
        Trend trend = Trend.of(points(0.01, 0, 1, 0, 1), Aim.LOWER);
        assertEquals(0.7305, trend.perYear().value(), 1e-9);
        assertEquals(4.445, trend.perYear().uncertainty(), 0.001);
        assertEquals(Direction.UNCLEAR, trend.direction());
    }

    @Test
    void tooFewOrTooNearTellNothing() {
        assertFalse(Trend.of(points(0.01, 1, 2), Aim.LOWER).perYear().isKnown());
        Course.Point now = new Course.Point(0, Quantity.known(1, "dB", 0.1));
        assertEquals(Direction.UNKNOWN, Trend.of(List.of(now, now, now), Aim.LOWER).direction());
    }
}
