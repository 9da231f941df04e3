package offtape.report.render;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * The curves of a chart as the chart library lays them out, and its map from values to places.
 * Places count from the upper left corner of the plot, which is {@code width} by {@code height}.
 */
final class Plot {

    static {
        if (System.getProperty("java.awt.headless") == null) {
            System.setProperty("java.awt.headless", "true");
        }
    }

    /** Of dense curves the extremes of such a width are drawn: less than a curve is thick. */
    private static final int UNITS_PER_COLUMN = 2;

    private final Chart chart;
    private final XYChart painted;
    private final List<Curve> curves;

    /** A curve at the points that are drawn, values beyond the axis too, and its path. */
    record Curve(Series series, PathData path) {}

    private Plot(Chart chart, XYChart painted, List<Curve> curves) {
        this.chart = chart;
        this.painted = painted;
        this.curves = curves;
    }

    /** Lays out the curves that have at least one point on the axes. */
    static Plot of(Chart chart, int width, int height) {
        List<Series> drawable =
                chart.series().stream()
                        .map(s -> s.on(chart.x()))
                        .map(s -> s.thinned(chart.x(), width / UNITS_PER_COLUMN))
                        .filter(s -> s.size() > 0)
                        .toList();
        XYChart xy = new XYChartBuilder().width(width).height(height).build();
        style(xy.getStyler(), chart);
        for (int i = 0; i < drawable.size(); i++) {
            add(xy, drawable.get(i).limited(chart.y()), i);
        }
        if (drawable.isEmpty()) {
            addCorners(xy, chart);
        }
        CurveGraphics graphics = new CurveGraphics(drawable.size());
        paint(xy, graphics, width, height);
        Plot plot = new Plot(chart, xy, new ArrayList<>());
        for (int i = 0; i < drawable.size(); i++) {
            plot.curves.add(plot.curve(drawable.get(i), graphics.curves().get(i)));
        }
        return plot;
    }

    /**
     * Paints with no room for ticks. The library would measure the texts of ticks although none is
     * shown, which needs fonts; it also maps no places where it finds no room, so it finds some
     * again afterwards.
     */
    private static void paint(XYChart xy, CurveGraphics graphics, int width, int height) {
        XYStyler styler = xy.getStyler();
        styler.setXAxisTickMarkSpacingHint(Integer.MAX_VALUE);
        styler.setYAxisTickMarkSpacingHint(Integer.MAX_VALUE);
        xy.paint(graphics, width, height);
        styler.setXAxisTickMarkSpacingHint(0);
        styler.setYAxisTickMarkSpacingHint(0);
    }

    /** The curves that have something to show. */
    List<Curve> curves() {
        return List.copyOf(curves);
    }

    /** Place of a value of the x axis, which must hold it. */
    double x(double value) {
        return painted.getScreenXFromChart(value);
    }

    /** Place of a value of the y axis, which must hold it. */
    double y(double value) {
        return painted.getScreenYFromChart(value);
    }

    private Curve curve(Series series, PathData path) {
        if (series.size() == 1 && path.points().isEmpty() && chart.y().holds(series.y()[0])) {
            path.moveTo(x(series.x()[0]), y(series.y()[0]));
        }
        return new Curve(series, path);
    }

    private static void style(XYStyler styler, Chart chart) {
        styler.setXAxisLogarithmic(chart.x().logarithmic());
        styler.setYAxisLogarithmic(chart.y().logarithmic());
        styler.setXAxisMin(chart.x().min()).setXAxisMax(chart.x().max());
        styler.setYAxisMin(chart.y().min()).setYAxisMax(chart.y().max());
        styler.setAxisTicksVisible(false).setAxisTitlesVisible(false);
        styler.setPlotGridLinesVisible(false).setPlotMargin(0);
        styler.setLegendVisible(false);
        styler.setChartTitleVisible(false);
        styler.setPlotBorderVisible(false);
        styler.setPlotContentSize(1);
        styler.setChartPadding(0);
    }

    private static void add(XYChart xy, Series series, int index) {
        XYSeries added = xy.addSeries("curve " + index, series.x(), series.y());
        boolean filled = series.look() == Look.EXTREMES;
        added.setXYSeriesRenderStyle(
                filled
                        ? XYSeries.XYSeriesRenderStyle.PolygonArea
                        : XYSeries.XYSeriesRenderStyle.Line);
        added.setMarker(SeriesMarkers.NONE);
        added.setLineColor(filled ? Color.BLACK : CurveGraphics.colourOf(index));
        added.setFillColor(CurveGraphics.colourOf(index));
        added.setLineStyle(new BasicStroke(1));
    }

    /** The library maps no places without a curve; this one is never taken down. */
    private static void addCorners(XYChart xy, Chart chart) {
        xy.addSeries(
                        "corners",
                        new double[] {chart.x().min(), chart.x().max()},
                        new double[] {chart.y().min(), chart.y().max()})
                .setMarker(SeriesMarkers.NONE);
    }
}
