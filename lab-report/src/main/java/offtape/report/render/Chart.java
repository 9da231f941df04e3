package offtape.report.render;

import java.util.List;

/**
 * What a chart shows, before it is drawn.
 *
 * @param id unique name in its page, letters and hyphens
 * @param title what is plotted
 * @param description what is to be seen, in words and numbers
 * @param height height in units of the drawing, which is 640 wide
 * @param x horizontal axis
 * @param y vertical axis
 * @param series the curves
 * @param bands shaded stretches of the x axis
 * @param rules horizontal lines at values of their own meaning
 * @param marks labelled points
 */
record Chart(
        String id,
        String title,
        String description,
        int height,
        Axis x,
        Axis y,
        List<Series> series,
        List<Band> bands,
        List<Rule> rules,
        List<Mark> marks) {

    /** Usual height. */
    static final int HEIGHT = 400;

    /** Copies the lists so that the chart cannot change. */
    Chart {
        series = List.copyOf(series);
        bands = List.copyOf(bands);
        rules = List.copyOf(rules);
        marks = List.copyOf(marks);
    }

    /** A chart with curves only. */
    static Chart of(
            String id, String title, String description, Axis x, Axis y, List<Series> series) {
        return new Chart(
                id, title, description, HEIGHT, x, y, series, List.of(), List.of(), List.of());
    }

    /** The same chart with other shaded stretches. */
    Chart withBands(List<Band> newBands) {
        return new Chart(id, title, description, height, x, y, series, newBands, rules, marks);
    }

    /** The same chart with other horizontal lines. */
    Chart withRules(List<Rule> newRules) {
        return new Chart(id, title, description, height, x, y, series, bands, newRules, marks);
    }

    /** The same chart with other labelled points. */
    Chart withMarks(List<Mark> newMarks) {
        return new Chart(id, title, description, height, x, y, series, bands, rules, newMarks);
    }

    /** The same chart with another height. */
    Chart withHeight(int newHeight) {
        return new Chart(id, title, description, newHeight, x, y, series, bands, rules, marks);
    }

    /** A shaded stretch of the x axis between two values; its label may be empty. */
    record Band(double from, double to, String label) {}

    /** A horizontal line at a value of the y axis. */
    record Rule(double value, String label) {}

    /**
     * A labelled point.
     *
     * @param x place on the x axis
     * @param y place on the y axis
     * @param label what is written beside it
     * @param look colour of the point
     * @param stem whether a line goes down from it to the x axis
     */
    record Mark(double x, double y, String label, Look look, boolean stem) {}
}
