package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class SeriesTest {

    private static final Axis HERTZ = Axis.audioFrequency(20, 20_000);
    private static final Axis DECIBELS = Axis.linear("dB", -20, 0);

    @Test
    void onlyPointsThatCanBeDrawnAreKept() {
        Series series =
                new Series(
                        "",
                        Look.LEFT,
                        new double[] {-1, 0, 10, 20, 100, 200, 300, 400, 30_000},
                        new double[] {
                            0, 0, 0, -3, Double.NaN, Double.POSITIVE_INFINITY, -1, -999, 0
                        });
        Series kept = series.on(HERTZ, DECIBELS);
        assertArrayEquals(new double[] {20, 300, 400}, kept.x());
        // the axis is 20 dB long, so that nothing is drawn further down than -20 dB - 20 dB
        assertArrayEquals(new double[] {-3, -1, -40}, kept.y());
    }

    @Test
    void thinningKeepsTheExtremesOfEachColumn() {
        Random random = new Random(7);
        int n = 50_000;
        double[] x = IntStream.range(0, n).mapToDouble(i -> 20 + i * 0.3).toArray();
        double[] y = random.doubles(n, -15, -5).toArray();
        y[1234] = -18;
        y[40_000] = -1;
        Series thin = new Series("", Look.LEFT, x, y).thinned(HERTZ, DECIBELS, 500);
        assertTrue(thin.size() <= 1000, "points " + thin.size());
        assertEquals(-18, Arrays.stream(thin.y()).min().orElseThrow());
        assertEquals(-1, Arrays.stream(thin.y()).max().orElseThrow());
        for (int i = 1; i < thin.size(); i++) {
            assertTrue(thin.x()[i] > thin.x()[i - 1], "points come in their order");
        }
    }

    @Test
    void shortCurvesStayAsTheyAre() {
        Series series = new Series("", Look.LEFT, new double[] {20, 30}, new double[] {0, -1});
        assertEquals(series, series.thinned(HERTZ, DECIBELS, 500));
    }
}
