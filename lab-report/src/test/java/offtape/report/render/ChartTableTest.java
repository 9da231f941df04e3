package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class ChartTableTest {

    private static final Axis HERTZ = Axis.audioFrequency(Reader.ENGLISH, 20, 20_000);
    private static final Axis DECIBELS = Axis.linear("Level, dB re 1 kHz", -20, 5);

    @Test
    void aRowAPointInItsDecimals() {
        Series left =
                new Series(
                        "Left",
                        Look.LEFT,
                        new double[] {100, 1000, 12_345},
                        new double[] {0.456, 0, -3.21},
                        new int[] {2, 1, 0});
        Series right =
                Series.of("Right", Look.RIGHT, new double[] {110, 900}, new double[] {1, 2}, 1);
        DataTable table = ChartTable.of(Reader.ENGLISH, chart(List.of(left, right)));
        assertEquals("a title, some points", table.caption());
        assertEquals(
                List.of("Frequency", "Left, dB re 1 kHz", "Right, dB re 1 kHz"), table.heads());
        // of the other curve the nearest point
        assertEquals(
                List.of(
                        List.of("100\u00a0Hz", "+0.46", "+1.0"),
                        List.of("1\u00a0kHz", "0.0", "+2.0"),
                        List.of("12.3\u00a0kHz", "−3", "+2.0")),
                table.rows());
    }

    /** Of 111 points every tenth makes 12 rows; with ticks at each 20 s tenths are fine enough. */
    @Test
    void longCurvesAreShortenedWithBothEnds() {
        double[] seconds = IntStream.rangeClosed(0, 110).asDoubleStream().toArray();
        Chart chart =
                Chart.of(
                        "test",
                        "a title",
                        "",
                        Axis.linear("Time, s", 0, 110),
                        Axis.linear("Deviation, %", 0, 200),
                        List.of(Series.of("", Look.WHOLE, seconds, seconds, 0)));
        DataTable table = ChartTable.of(Reader.ENGLISH, chart);
        assertEquals(List.of("Time, s", "Deviation, %"), table.heads());
        assertEquals(12, table.rows().size());
        assertEquals(List.of("10.0", "10"), table.rows().get(1));
        assertEquals(List.of("110.0", "110"), table.rows().get(11));
    }

    @Test
    void nothingGivesAnEmptyTable() {
        assertEquals(
                "",
                ChartTable.of(Reader.ENGLISH, chart(List.of())).folded(Reader.ENGLISH).toString());
    }

    private static Chart chart(List<Series> series) {
        return Chart.of("test", "a title", "", HERTZ, DECIBELS, series);
    }
}
