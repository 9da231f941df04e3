package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.CrosstalkCurve;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Charts of the pair of channels. */
class ChannelChartsTest {

    /** A path without crosstalk has a curve far under all that others have. */
    @ParameterizedTest
    @ValueSource(doubles = {-40, -97, -104, -180, -260})
    void crosstalkOfAnySizeHasAChart(double db) {
        double[] hz = {100, 1000, 10_000};
        Double[] levels = {db, db, db};
        double[] floor = new double[3];
        Arrays.fill(floor, db - 5);
        Quantity no = Quantity.unknown("Not measured.");
        Channels channels =
                new Channels(
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        no,
                        List.of(
                                new CrosstalkCurve(
                                        "left",
                                        "right",
                                        hz,
                                        levels,
                                        new Double[] {1., 1., 1.},
                                        floor)),
                        null);
        Chart chart =
                new ChannelCharts(Reader.ENGLISH)
                        .crosstalk(channels, new LimitLines(Reader.ENGLISH, List.of()), "");
        assertTrue(chart.y().min() < db && chart.y().max() > db, () -> chart.y().toString());
    }
}
