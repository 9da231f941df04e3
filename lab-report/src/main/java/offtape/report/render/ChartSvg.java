package offtape.report.render;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws a chart as SVG: the curves from the chart library, everything else (grid, ticks, texts,
 * shading, marks) written here. Texts stay texts; colours and sizes come from the style sheet.
 */
final class ChartSvg {

    /** Width of every drawing in its units. */
    static final int WIDTH = 640;

    private static final int LEFT = 92;
    private static final int RIGHT = 24;
    private static final int TOP = 40;
    private static final int BOTTOM = 58;
    private static final double SAMPLE = 3;

    private final Chart chart;
    private final int plotWidth;
    private final int plotHeight;
    private final Plot plot;
    private final Markup out = new Markup();

    private ChartSvg(Chart chart) {
        this.chart = chart;
        plotWidth = WIDTH - LEFT - RIGHT;
        plotHeight = chart.height() - TOP - BOTTOM;
        plot = Plot.of(chart, plotWidth, plotHeight);
    }

    /** The drawing of {@code chart}, an {@code svg} element. */
    static Markup draw(Chart chart) {
        return new ChartSvg(chart).draw();
    }

    private Markup draw() {
        String id = chart.id();
        out.open(
                        "svg",
                        "xmlns",
                        "http://www.w3.org/2000/svg",
                        "class",
                        "chart",
                        "role",
                        "img",
                        "viewBox",
                        "0 0 " + WIDTH + " " + chart.height(),
                        "aria-labelledby",
                        id + "-title",
                        "aria-describedby",
                        id + "-desc")
                .element("title", chart.title(), "id", id + "-title")
                .element("desc", chart.description(), "id", id + "-desc")
                .open("defs")
                .open("clipPath", "id", id + "-clip")
                .add(rect(0, 0, plotWidth, plotHeight, ""))
                .close("clipPath")
                .close("defs")
                .open("g", "transform", "translate(" + LEFT + " " + TOP + ")");
        drawGround();
        drawTicks();
        drawRules();
        drawCurves();
        drawMarks();
        drawLabels();
        return out.close("g").close("svg");
    }

    private void drawGround() {
        out.add(rect(0, 0, plotWidth, plotHeight, "ground"));
        for (Chart.Band band : chart.bands()) {
            double from = plot.x(limitX(band.from()));
            double to = plot.x(limitX(band.to()));
            out.add(rect(from, 0, to - from, plotHeight, "band"));
        }
        out.empty("path", "class", "grid", "fill", "none", "d", grid());
        out.add(rect(0, 0, plotWidth, plotHeight, "frame"));
    }

    private String grid() {
        PathData grid = new PathData();
        for (Tick tick : chart.x().ticks()) {
            grid.moveTo(plot.x(tick.value()), 0);
            grid.lineTo(plot.x(tick.value()), plotHeight);
        }
        for (Tick tick : chart.y().ticks()) {
            grid.moveTo(0, plot.y(tick.value()));
            grid.lineTo(plotWidth, plot.y(tick.value()));
        }
        return grid.data();
    }

    private void drawTicks() {
        double lastRight = Double.NEGATIVE_INFINITY;
        for (Tick tick : chart.x().ticks()) {
            double at = plot.x(tick.value());
            double half = Label.width(tick.label()) / 2;
            if (at - half > lastRight) {
                text(tick.label(), at, plotHeight + 20, "tick x", "middle");
                lastRight = at + half;
            }
        }
        double lastTop = Double.POSITIVE_INFINITY;
        for (Tick tick : chart.y().ticks()) {
            double at = plot.y(tick.value());
            if (at < lastTop) {
                text(tick.label(), -9, at + 5, "tick y", "end");
                lastTop = at - Label.LINE;
            }
        }
        text(chart.x().title(), plotWidth / 2.0, plotHeight + 45, "axis", "middle");
        text(chart.y().title(), 8 - LEFT, -17, "axis", "start");
    }

    private void drawRules() {
        for (Chart.Rule rule : chart.rules()) {
            double y = plot.y(rule.value());
            PathData line = new PathData();
            line.moveTo(0, y);
            line.lineTo(plotWidth, y);
            out.empty("path", "class", "rule", "fill", "none", "d", line.data());
        }
    }

    private void drawCurves() {
        out.open("g", "clip-path", "url(#" + chart.id() + "-clip)");
        for (Plot.Curve curve : plot.curves()) {
            boolean filled = curve.series().look() == Look.EXTREMES;
            out.empty(
                    "path",
                    "class",
                    "curve " + curve.series().look().cssClass(),
                    "fill",
                    filled ? "currentColor" : "none",
                    "d",
                    curve.path().data());
        }
        out.close("g");
    }

    private void drawMarks() {
        for (Chart.Mark mark : shownMarks()) {
            double x = plot.x(mark.x());
            double y = plot.y(limitY(mark.y()));
            if (mark.stem()) {
                PathData stem = new PathData();
                stem.moveTo(x, plotHeight);
                stem.lineTo(x, y);
                out.empty("path", "class", "stem " + mark.look().cssClass(), "d", stem.data());
            }
            dot(x, y, 4.5, "mark " + mark.look().cssClass());
        }
    }

    private void drawLabels() {
        LabelLayout layout =
                new LabelLayout(
                        new Box(2, 2, plotWidth - 2, plotHeight - 2),
                        plot.curves().stream().map(c -> c.path().dense(SAMPLE)).toList());
        for (Chart.Mark mark : shownMarks()) {
            double x = plot.x(mark.x());
            double y = plot.y(limitY(mark.y()));
            layout.reserve(new Box(x - 6, y - 6, x + 6, y + 6));
            if (mark.stem()) {
                layout.reserve(new Box(x - 2, y, x + 2, plotHeight));
            }
        }
        chart.bands().stream()
                .filter(b -> !b.label().isEmpty())
                .forEach(b -> layout.reserve(writeBand(b)));
        chart.rules().forEach(r -> layout.addRule(r.label(), plot.y(r.value())));
        for (Chart.Mark mark : shownMarks()) {
            layout.addPoint(
                    mark.label(),
                    plot.x(mark.x()),
                    plot.y(limitY(mark.y())),
                    mark.look().cssClass());
        }
        for (int i = 0; i < plot.curves().size(); i++) {
            Series series = plot.curves().get(i).series();
            if (!series.label().isEmpty()) {
                layout.addCurve(series.label(), i, series.look().cssClass());
            }
        }
        layout.labels().forEach(this::write);
    }

    private Box writeBand(Chart.Band band) {
        double middle = (plot.x(limitX(band.from())) + plot.x(limitX(band.to()))) / 2;
        double half = Label.width(band.label()) / 2;
        double x = Math.max(half + 2, Math.min(plotWidth - half - 2, middle));
        Label label = new Label(band.label(), x, 18, x, 18, "band-label", false);
        text(band.label(), x, 18, "label band-label", "middle");
        return label.box();
    }

    private void write(Label label) {
        if (label.needsLeader()) {
            PathData leader = new PathData();
            leader.moveTo(label.leaderX(), label.leaderY());
            leader.lineTo(label.anchorX(), label.anchorY());
            out.empty(
                    "path",
                    "class",
                    "leader " + label.cssClass(),
                    "fill",
                    "none",
                    "d",
                    leader.data());
            dot(label.anchorX(), label.anchorY(), 2.5, "leader-end " + label.cssClass());
        }
        String cssClass = "label " + label.cssClass();
        if (label.sample()) {
            PathData sample = new PathData();
            sample.moveTo(label.box().left(), label.y() - 5);
            sample.lineTo(label.box().left() + Label.SAMPLE, label.y() - 5);
            out.empty(
                    "path",
                    "class",
                    "curve " + label.cssClass(),
                    "fill",
                    "none",
                    "d",
                    sample.data());
            text(label.text(), label.textStart(), label.y(), cssClass, "start");
        } else {
            text(label.text(), label.x(), label.y(), cssClass, "middle");
        }
    }

    private List<Chart.Mark> shownMarks() {
        return chart.marks().stream().filter(m -> chart.x().holds(m.x())).toList();
    }

    private double limitX(double value) {
        return Math.max(chart.x().min(), Math.min(chart.x().max(), value));
    }

    private double limitY(double value) {
        return Math.max(chart.y().min(), Math.min(chart.y().max(), value));
    }

    private void dot(double x, double y, double radius, String cssClass) {
        out.empty(
                "circle",
                "class",
                cssClass,
                "cx",
                place(x),
                "cy",
                place(y),
                "r",
                Double.toString(radius));
    }

    private void text(String text, double x, double y, String cssClass, String anchor) {
        out.element(
                "text",
                text,
                "class",
                cssClass,
                "x",
                place(x),
                "y",
                place(y),
                "text-anchor",
                anchor);
    }

    private static Markup rect(double x, double y, double width, double height, String cssClass) {
        Markup rect = new Markup();
        String[] place = {
            "x", place(x), "y", place(y), "width", place(width), "height", place(height)
        };
        if (cssClass.isEmpty()) {
            return rect.empty("rect", place);
        }
        List<String> attributes = new ArrayList<>(List.of("class", cssClass, "fill", "none"));
        attributes.addAll(List.of(place));
        return rect.empty("rect", attributes.toArray(String[]::new));
    }

    private static String place(double value) {
        return Numbers.significant(Math.round(value * 10) / 10.0, 6).replace('\u2212', '-');
    }
}
