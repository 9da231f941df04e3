package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

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

    /** From the top of the plot to the foot of a band's name. */
    private static final int BAND_LABEL = 18;

    private final Wording words;
    private final Chart chart;
    private final int plotWidth;
    private final int plotHeight;
    private final Plot plot;
    private final Markup out = new Markup();

    private ChartSvg(Wording words, Chart chart) {
        this.words = words;
        this.chart = chart;
        plotWidth = WIDTH - LEFT - RIGHT;
        plotHeight = chart.height() - TOP - BOTTOM;
        plot = Plot.of(chart, plotWidth, plotHeight);
    }

    /** The drawing in the reader's language. */
    static Markup draw(Wording words, Chart chart) {
        return new ChartSvg(words, chart).draw();
    }

    private Markup draw() {
        String id = chart.id();
        out.open("svg", attributes(id))
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
        drawLimits();
        drawCurves();
        drawMarks();
        drawLabels();
        out.add(Told.of(chart, plot.curves()));
        return out.close("g").close("svg");
    }

    private String[] attributes(String id) {
        List<String> attributes =
                new ArrayList<>(
                        List.of(
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
                                id + "-desc",
                                "data-x",
                                Told.ends(chart.x()),
                                "data-y",
                                Told.ends(chart.y()),
                                "data-words",
                                ReadingWords.of(words, chart)));
        if (chart.sides() != null) {
            attributes.add("data-sides");
            attributes.add(chart.sides().second() + "\n" + chart.sides().first());
        }
        return attributes.toArray(String[]::new);
    }

    private void drawGround() {
        out.add(rect(0, 0, plotWidth, plotHeight, "ground"));
        for (Chart.Band band : chart.bands()) {
            double from = plot.x(limitX(band.from()));
            double to = plot.x(limitX(band.to()));
            out.add(rect(from, 0, to - from, plotHeight, "band"));
        }
        out.empty("path", "class", "grid", "d", grid());
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
            double half = Label.width(words.number(tick.label())) / 2;
            if (at - half > lastRight) {
                text(words.number(tick.label()), at, plotHeight + 20, "tick x");
                lastRight = at + half;
            }
        }
        double lastTop = Double.POSITIVE_INFINITY;
        for (Tick tick : chart.y().ticks()) {
            double at = plot.y(tick.value());
            if (at < lastTop) {
                text(words.number(tick.label()), -9, at + 5, "tick y");
                lastTop = at - Label.LINE;
            }
        }
        text(chart.x().title(), plotWidth / 2.0, plotHeight + 45, "axis");
        textFrom(chart.y().title(), 8 - LEFT, -17, "axis");
    }

    private void drawRules() {
        for (Chart.Rule rule : shownRules()) {
            double y = plot.y(rule.value());
            PathData line = new PathData();
            line.moveTo(0, y);
            line.lineTo(plotWidth, y);
            out.empty("path", "class", "rule", "d", line.data());
        }
    }

    private void drawLimits() {
        if (!chart.limits().isEmpty()) {
            out.open("g", "clip-path", "url(#" + chart.id() + "-clip)");
            chart.limits().forEach(l -> out.add(LimitPath.of(l, chart, plot)));
            out.close("g");
        }
    }

    private void drawCurves() {
        out.open("g", "clip-path", "url(#" + chart.id() + "-clip)");
        for (Plot.Curve curve : plot.curves()) {
            out.empty(
                    "path",
                    "class",
                    "curve " + curve.series().look().cssClass(),
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
        List<List<PathData.Point>> lines =
                Stream.concat(plot.curves().stream().map(Plot.Curve::path), limitPaths())
                        .map(path -> path.dense(SAMPLE))
                        .toList();
        LabelLayout layout = new LabelLayout(new Box(2, 2, plotWidth - 2, plotHeight - 2), lines);
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
        shownRules().forEach(r -> layout.addRule(r.label(), plot.y(r.value())));
        chart.limits().stream()
                .filter(l -> !l.label().isEmpty())
                .forEach(l -> LimitPath.addLabel(l, chart, plot, layout));
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

    /** At the top of the band, or at its foot where a limit goes through its top. */
    private Box writeBand(Chart.Band band) {
        double middle = (plot.x(limitX(band.from())) + plot.x(limitX(band.to()))) / 2;
        double half = Label.width(band.label()) / 2;
        double x = Math.max(half + 2, Math.min(plotWidth - half - 2, middle));
        Box top = bandLabel(band, x, BAND_LABEL).box();
        boolean isCrossed =
                limitPaths()
                        .flatMap(path -> path.dense(SAMPLE).stream())
                        .anyMatch(p -> top.contains(p.x(), p.y()));
        double y = isCrossed ? plotHeight - BAND_LABEL / 2.0 : BAND_LABEL;
        text(band.label(), x, y, "label band-label");
        return bandLabel(band, x, y).box();
    }

    private static Label bandLabel(Chart.Band band, double x, double y) {
        return new Label(band.label(), x, y, x, y, "band-label", false);
    }

    private Stream<PathData> limitPaths() {
        return chart.limits().stream()
                .flatMap(
                        l ->
                                Stream.of(
                                        LimitPath.line(l, chart, plot),
                                        LimitPath.teeth(l, chart, plot)));
    }

    private void write(Label label) {
        if (label.needsLeader()) {
            PathData leader = new PathData();
            leader.moveTo(label.leaderX(), label.leaderY());
            leader.lineTo(label.anchorX(), label.anchorY());
            out.empty("path", "class", "leader " + label.cssClass(), "d", leader.data());
            dot(label.anchorX(), label.anchorY(), 2.5, "leader-end " + label.cssClass());
        }
        String cssClass = "label " + label.cssClass();
        if (label.sample()) {
            PathData sample = new PathData();
            sample.moveTo(label.box().left(), label.y() - 5);
            sample.lineTo(label.box().left() + Label.SAMPLE, label.y() - 5);
            out.empty("path", "class", "curve " + label.cssClass(), "d", sample.data());
            textFrom(label.text(), label.textStart(), label.y(), cssClass);
        } else {
            text(label.text(), label.x(), label.y(), cssClass);
        }
    }

    private List<Chart.Mark> shownMarks() {
        return chart.marks().stream().filter(m -> chart.x().holds(m.x())).toList();
    }

    private List<Chart.Rule> shownRules() {
        return chart.rules().stream().filter(r -> chart.y().holds(r.value())).toList();
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

    /** A text about its place; only the ticks of the y axis end there. */
    private void text(String text, double x, double y, String cssClass) {
        out.element("text", text, "class", cssClass, "x", place(x), "y", place(y));
    }

    private void textFrom(String text, double x, double y, String cssClass) {
        text(text, x, y, cssClass + " from");
    }

    private static Markup rect(double x, double y, double width, double height, String cssClass) {
        Markup rect = new Markup();
        String[] place = {
            "x", place(x), "y", place(y), "width", place(width), "height", place(height)
        };
        if (cssClass.isEmpty()) {
            return rect.empty("rect", place);
        }
        List<String> attributes = new ArrayList<>(List.of("class", cssClass));
        attributes.addAll(List.of(place));
        return rect.empty("rect", attributes.toArray(String[]::new));
    }

    private static String place(double value) {
        return Numbers.significant(Math.round(value * 10) / 10.0, 6).replace('\u2212', '-');
    }
}
