package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class ChartSvgTest {

    private static final Axis HERTZ = Axis.audioFrequency(20, 20_000);
    private static final Axis DECIBELS = Axis.linear("Level, dB", -20, 5);
    private static final int MOST_BYTES = 60_000;

    /**
     * On a logarithmic axis from 20 Hz to 20 kHz (three decades), f lies at lg(f / 20 Hz) / 3 of
     * the width: 100 Hz at lg 5 / 3, 1 kHz at lg 50 / 3, 10 kHz at lg 500 / 3.
     */
    @ParameterizedTest
    @CsvSource({"100, 100, 0.232990", "1k, 1000, 0.566323", "10k, 10000, 0.899657"})
    void tickTextsStandWhereTheLogarithmSays(String label, double hz, double part)
            throws Exception {
        assertEquals(Math.log10(hz / 20) / 3, part, 1e-6);
        Document svg = Svg.parse(ChartSvg.draw(chart(List.of(slope()))).toString());
        Map<String, Double> ticks = ticks(svg, "x");
        double left = ticks.get("20");
        double right = ticks.get("20k");
        // places are written in tenths of a unit
        assertEquals(left + part * (right - left), ticks.get(label), 0.11);
    }

    @Test
    void levelTicksAreEvenlySpaced() throws Exception {
        Document svg = Svg.parse(ChartSvg.draw(chart(List.of(slope()))).toString());
        Map<String, Double> ticks = ticks(svg, "y");
        double step = ticks.get("−20") - ticks.get("−15");
        assertTrue(step > 0, "lower levels stand lower");
        assertEquals(step, ticks.get("−5") - ticks.get("0"), 0.21);
    }

    /** The curve goes from 20 Hz, -20 dB (lower left corner) to 20 kHz, 0 dB (right, 4/5 up). */
    @Test
    void theCurveRunsBetweenItsTicks() {
        Plot plot = Plot.of(chart(List.of(slope())), 500, 250);
        List<PathData.Point> points = plot.curves().get(0).path().points();
        assertEquals(new PathData.Point(0, 250), points.get(0));
        assertEquals(new PathData.Point(500, 50), points.get(points.size() - 1));
    }

    @Test
    void longCurvesStaySmall() throws Exception {
        Random random = new Random(3);
        int n = 100_000;
        double[] f = IntStream.range(0, n).mapToDouble(i -> i * 0.2).toArray();
        List<Series> noisy =
                List.of(Look.LEFT, Look.RIGHT, Look.LEFT_SECOND, Look.RIGHT_SECOND).stream()
                        .map(
                                look ->
                                        new Series(
                                                look.name(),
                                                look,
                                                f,
                                                random.doubles(n, -20, 5).toArray()))
                        .toList();
        String svg = ChartSvg.draw(chart(noisy)).toString();
        Svg.parse(svg);
        assertTrue(svg.length() < MOST_BYTES, "bytes " + svg.length());
    }

    @Test
    void touchingSegmentsAreJoined() {
        Plot plot = Plot.of(chart(List.of(slope())), 500, 250);
        String path = plot.curves().get(0).path().data();
        assertEquals(0, path.lastIndexOf('M'), path);
    }

    @Test
    void pointsThatCannotBeDrawnLeaveNoTrace() throws Exception {
        Series odd =
                new Series(
                        "odd",
                        Look.LEFT,
                        new double[] {-5, 0, 100, 1000, 2000},
                        new double[] {0, 0, Double.NEGATIVE_INFINITY, Double.NaN, 1e9});
        String svg = ChartSvg.draw(chart(List.of(odd))).toString();
        Svg.parse(svg);
        assertFalse(svg.contains("NaN") || svg.contains("Infinity") || svg.contains("null"), svg);
    }

    @Test
    void aSinglePointIsSeen() throws Exception {
        Series point = new Series("one", Look.LEFT, new double[] {1000}, new double[] {0});
        String svg = ChartSvg.draw(chart(List.of(point))).toString();
        Svg.parse(svg);
        assertTrue(svg.contains("h0\""), "a line of no length with round caps");
    }

    @Test
    void aChartWithoutCurvesHasItsTicks() throws Exception {
        Document svg = Svg.parse(ChartSvg.draw(chart(List.of())).toString());
        assertTrue(ticks(svg, "x").containsKey("1k"));
    }

    @Test
    void theDrawingIsNamedAndDescribed() throws Exception {
        Element svg =
                Svg.parse(ChartSvg.draw(chart(List.of(slope()))).toString()).getDocumentElement();
        assertEquals("img", svg.getAttribute("role"));
        assertEquals("a title", svg.getElementsByTagName("title").item(0).getTextContent());
        assertEquals("what is seen", svg.getElementsByTagName("desc").item(0).getTextContent());
        assertEquals("test-title", svg.getAttribute("aria-labelledby"));
        assertEquals("test-desc", svg.getAttribute("aria-describedby"));
    }

    @Test
    void bandsReachFromEndToEnd() throws Exception {
        Chart chart =
                chart(List.of(slope())).withBands(List.of(new Chart.Band(1, 1e6, "everything")));
        Document svg = Svg.parse(ChartSvg.draw(chart).toString());
        Element band =
                Svg.elements(svg, "rect").stream()
                        .filter(r -> r.getAttribute("class").equals("band"))
                        .findFirst()
                        .orElseThrow();
        Map<String, Double> ticks = ticks(svg, "x");
        assertEquals(
                ticks.get("20k") - ticks.get("20"),
                Double.parseDouble(band.getAttribute("width")),
                0.11);
    }

    private static Series slope() {
        return new Series(
                "slope",
                Look.LEFT,
                new double[] {20, 632.4555, 20_000},
                new double[] {-20, -10, 0});
    }

    private static Chart chart(List<Series> series) {
        return Chart.of("test", "a title", "what is seen", HERTZ, DECIBELS, series);
    }

    private static Map<String, Double> ticks(Document svg, String axis) {
        Map<String, Double> places = new TreeMap<>();
        for (Element text : Svg.elements(svg, "text")) {
            if (text.getAttribute("class").equals("tick " + axis)) {
                places.put(text.getTextContent(), Double.parseDouble(text.getAttribute(axis)));
            }
        }
        return places;
    }
}
