package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class SeriesTest {

    private static final Axis HERTZ = Axis.audioFrequency(Reader.ENGLISH, 20, 20_000);
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
                        },
                        new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8});
        Series kept = series.on(HERTZ);
        assertArrayEquals(new double[] {20, 300, 400}, kept.x());
        assertArrayEquals(new double[] {-3, -1, -999}, kept.y());
        assertArrayEquals(new int[] {3, 6, 7}, kept.decimals());
        // the axis is 20 dB long, so that nothing is drawn further down than -20 dB - 20 dB
        assertArrayEquals(new double[] {-3, -1, -40}, kept.limited(DECIBELS).y());
    }

    @Test
    void thinningKeepsTheExtremesOfEachColumn() {
        Random random = new Random(7);
        int n = 50_000;
        double[] x = IntStream.range(0, n).mapToDouble(i -> 20 + i * 0.3).toArray();
        double[] y = random.doubles(n, -15, -5).toArray();
        y[1234] = -18;
        y[40_000] = -1;
        Series thin = Series.of("", Look.LEFT, x, y, 1).thinned(HERTZ, 500);
        assertTrue(thin.size() <= 1000, "points " + thin.size());
        assertEquals(-18, Arrays.stream(thin.y()).min().orElseThrow());
        assertEquals(-1, Arrays.stream(thin.y()).max().orElseThrow());
        for (int i = 1; i < thin.size(); i++) {
            assertTrue(thin.x()[i] > thin.x()[i - 1], "points come in their order");
        }
    }

    /** 0.3 dB allows one decimal, 0.02 dB two, 0.004 dB would allow three. */
    @Test
    void decimalsFollowTheUncertainty() {
        double[] x = {20, 30, 40};
        Series series =
                Series.within("", Look.LEFT, x, new double[3], new double[] {0.3, 0.02, 0.004}, 2);
        assertArrayEquals(new int[] {1, 2, 2}, series.decimals());
    }

    @Test
    void shortCurvesStayAsTheyAre() {
        Series series = Series.of("", Look.LEFT, new double[] {20, 30}, new double[] {0, -1}, 1);
        assertEquals(series, series.thinned(HERTZ, 500));
    }
}
