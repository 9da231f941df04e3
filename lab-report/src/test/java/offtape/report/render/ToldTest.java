package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;

final class ToldTest {

    private static final Axis HERTZ = Axis.audioFrequency(Reader.ENGLISH, 20, 20_000);
    private static final Axis DECIBELS = Axis.linear("Level, dB re 1 kHz", -20, 5);

    /**
     * By hand: n stands as 2n, −n as 2n − 1. 15 is 30, the 31st letter; 16 is 32, low bits 0 with
     * the sign for more (32, "g"), then 1 ("B"); 500 is 1000 = 31 · 32 + 8, so 8 + 32 ("o") and 31
     * ("f"); of 3 and 1 the difference is −2, which is 3.
     */
    @ParameterizedTest
    @CsvSource({"0, A", "1, C", "-1, B", "15, e", "16, gB", "-16, f", "500, of", "'3,1', GD"})
    void numbersArePackedAsTheirDifferences(String values, String packed) {
        long[] numbers = List.of(values.split(",")).stream().mapToLong(Long::parseLong).toArray();
        assertEquals(packed, Told.packed(numbers));
    }

    @Test
    void anyNumbersComeBack() {
        Random random = new Random(5);
        long[] numbers =
                LongStream.generate(() -> random.nextLong() >> (12 + random.nextInt(50)))
                        .limit(500)
                        .toArray();
        assertEquals(LongStream.of(numbers).boxed().toList(), Unpacked.of(Told.packed(numbers)));
    }

    /** Frequencies are numbered by their three digits: 100 Hz is 900 · 2 + 0, 16.6 Hz 900 + 66. */
    @Test
    void aPointIsToldInItsDecimals() throws Exception {
        Series curve =
                new Series(
                        "Left",
                        Look.LEFT,
                        new double[] {20.04, 100, 999.7, 15_923},
                        new double[] {-0.4567, 0.125, -1.05, -45.678},
                        new int[] {1, 2, 2, 0});
        Element told = told(chart(List.of(curve))).get(0);
        assertEquals("told left", told.getAttribute("class"));
        assertEquals("Left", told.getAttribute("data-name"));
        // 20.0; 100; 1000; 15 900
        assertEquals(
                List.of(900L + 100, 1800L, 2700L, 3600L + 59),
                Unpacked.of(told.getAttribute("data-x")));
        // in hundredths −0.5, 0.13, −1.05 and −46; the value beyond the axis is told too
        assertEquals(List.of(-50L, 13L, -105L, -4600L), Unpacked.of(told.getAttribute("data-y")));
        assertEquals("1x1 2x2 0x1", told.getAttribute("data-decimals"));
    }

    @Test
    void placesThatCurvesShareStandOnce() throws Exception {
        List<Element> told =
                told(chart(List.of(level("Left", Look.LEFT, -3), level("Right", Look.RIGHT, -4))));
        assertTrue(!told.get(0).getAttribute("data-x").isEmpty());
        assertEquals("", told.get(1).getAttribute("data-x"));
        assertEquals("1", told.get(1).getAttribute("data-decimals"));
    }

    @Test
    void marksAreOneCurveFromLeftToRight() throws Exception {
        Chart chart =
                chart(List.of())
                        .withMarks(
                                List.of(
                                        mark(5000, "L 5 kHz"),
                                        mark(50, "hum\nof two lines"),
                                        mark(90_000, "beyond the axis")));
        List<Element> told = told(chart);
        assertEquals(1, told.size());
        // a line feed parts names; XML readers give it as a space
        assertEquals("hum of two lines L 5 kHz", told.get(0).getAttribute("data-name"));
        assertEquals(
                List.of(900L + 400, 2700L + 400), Unpacked.of(told.get(0).getAttribute("data-x")));
    }

    @Test
    void anAreaIsToldByCurvesOfItsOwn() throws Exception {
        Series area =
                Series.of("", Look.EXTREMES, new double[] {100, 100}, new double[] {1, -1}, 0);
        Chart chart = chart(List.of(area));
        assertEquals(0, told(chart).size());
        List<Element> told = told(chart.withTold(List.of(level("Highest", Look.EXTREMES, 1))));
        assertEquals(1, told.size());
        assertEquals("Highest", told.get(0).getAttribute("data-name"));
    }

    @Test
    void theAxesAreToldWithTheDrawing() throws Exception {
        Element svg =
                Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart(List.of())).toString())
                        .getDocumentElement();
        assertEquals("20 20000 log", svg.getAttribute("data-x"));
        // a step of 5 dB is told in tenths
        assertEquals("-20 5 1", svg.getAttribute("data-y"));
    }

    private static Series level(String name, Look look, double db) {
        return Series.of(name, look, new double[] {100, 1000}, new double[] {db, db}, 1);
    }

    private static Chart.Mark mark(double hz, String label) {
        return new Chart.Mark(hz, -3, 1, label, Look.LEFT, false);
    }

    private static Chart chart(List<Series> series) {
        return Chart.of("test", "a title", "what is seen", HERTZ, DECIBELS, series);
    }

    private static List<Element> told(Chart chart) throws Exception {
        return Svg.elements(Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart).toString()), "g")
                .stream()
                .filter(g -> g.getAttribute("class").startsWith("told"))
                .toList();
    }
}
