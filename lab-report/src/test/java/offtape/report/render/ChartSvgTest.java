package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class ChartSvgTest {

    private static final Axis HERTZ = Axis.audioFrequency(Reader.ENGLISH, 20, 20_000);
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
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart(List.of(slope()))).toString());
        Map<String, Double> ticks = ticks(svg, "x");
        double left = ticks.get("20");
        double right = ticks.get("20k");
        // places are written in tenths of a unit
        assertEquals(left + part * (right - left), ticks.get(label), 0.11);
    }

    @Test
    void levelTicksAreEvenlySpaced() throws Exception {
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart(List.of(slope()))).toString());
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
                                        Series.of(
                                                look.name(),
                                                look,
                                                f,
                                                random.doubles(n, -20, 5).toArray(),
                                                2))
                        .toList();
        String svg = ChartSvg.draw(Reader.ENGLISH, chart(noisy)).toString();
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
                Series.of(
                        "odd",
                        Look.LEFT,
                        new double[] {-5, 0, 100, 1000, 2000},
                        new double[] {0, 0, Double.NEGATIVE_INFINITY, Double.NaN, 1e9},
                        1);
        String svg = ChartSvg.draw(Reader.ENGLISH, chart(List.of(odd))).toString();
        Svg.parse(svg);
        assertFalse(svg.contains("NaN") || svg.contains("Infinity") || svg.contains("null"), svg);
    }

    @Test
    void aSinglePointIsSeen() throws Exception {
        Series point = Series.of("one", Look.LEFT, new double[] {1000}, new double[] {0}, 1);
        String svg = ChartSvg.draw(Reader.ENGLISH, chart(List.of(point))).toString();
        Svg.parse(svg);
        assertTrue(svg.contains("h0\""), "a line of no length with round caps");
    }

    @Test
    void aChartWithoutCurvesHasItsTicks() throws Exception {
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart(List.of())).toString());
        assertTrue(ticks(svg, "x").containsKey("1k"));
    }

    @Test
    void theDrawingIsNamedAndDescribed() throws Exception {
        Element svg =
                Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart(List.of(slope()))).toString())
                        .getDocumentElement();
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
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart).toString());
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

    /** A boost may be limited where no gain reaches: the line would lie outside the frame. */
    @Test
    void rulesBeyondTheAxisAreLeftOut() throws Exception {
        Chart chart =
                chart(List.of(slope()))
                        .withRules(
                                List.of(new Chart.Rule(-3, "edge"), new Chart.Rule(12, "limit")));
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart).toString());
        assertEquals(1, paths(svg, "rule").size());
        assertTrue(
                Svg.elements(svg, "text").stream()
                        .noneMatch(t -> t.getTextContent().equals("limit")));
    }

    /**
     * From 100 Hz to 10 kHz at −5 dB, teeth upwards if more would fail, downwards if less would.
     */
    @ParameterizedTest
    @CsvSource({"true, -1", "false, 1"})
    void limitsRunBetweenTheirTicksWithTeethWhereTheyFail(boolean isUpper, int down)
            throws Exception {
        Chart chart =
                chart(List.of(slope()))
                        .withLimits(
                                List.of(
                                        new Chart.LimitLine(
                                                new double[] {100, 10_000},
                                                new double[] {-5, -5},
                                                isUpper,
                                                "limit")));
        Document svg = Svg.parse(ChartSvg.draw(Reader.ENGLISH, chart).toString());
        double[] line = numbers(paths(svg, "limit").get(0));
        Map<String, Double> across = ticks(svg, "x");
        // texts stand 5 units below the line that they name
        assertEquals(across.get("100"), line[0], 0.11);
        assertEquals(ticks(svg, "y").get("−5") - 5, line[1], 0.11);
        assertEquals(across.get("10k"), line[0] + line[2], 0.11);
        assertEquals(0, line[3]);
        double[] teeth = numbers(paths(svg, "limit teeth").get(0));
        assertEquals(line[1], teeth[1], 0.11, "a tooth starts on the line");
        assertEquals(down, Math.signum(teeth[3]), "and leaves it to where curves fail");
        assertTrue(
                Svg.elements(svg, "text").stream()
                        .anyMatch(t -> t.getTextContent().equals("limit")));
    }

    private static List<String> paths(Document svg, String cssClass) {
        return Svg.elements(svg, "path").stream()
                .filter(p -> p.getAttribute("class").equals(cssClass))
                .map(p -> p.getAttribute("d"))
                .toList();
    }

    private static double[] numbers(String path) {
        return Pattern.compile("-?[0-9.]+")
                .matcher(path)
                .results()
                .mapToDouble(m -> Double.parseDouble(m.group()))
                .toArray();
    }

    private static Series slope() {
        return Series.of(
                "slope",
                Look.LEFT,
                new double[] {20, 632.4555, 20_000},
                new double[] {-20, -10, 0},
                1);
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
