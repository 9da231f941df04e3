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
 * @param limits borders that a set of limits draws
 * @param told curves to be read off the chart in place of those that are drawn, such as both edges
 *     of an area; empty if they are those that are drawn
 * @param sides what curves in the first and in the second look are, or null if both always show
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
        List<Mark> marks,
        List<LimitLine> limits,
        List<Series> told,
        Sides sides) {

    /** Usual height. */
    static final int HEIGHT = 400;

    /** Copies the lists so that the chart cannot change. */
    Chart {
        series = List.copyOf(series);
        bands = List.copyOf(bands);
        rules = List.copyOf(rules);
        marks = List.copyOf(marks);
        limits = List.copyOf(limits);
        told = List.copyOf(told);
    }

    /** A chart with curves only. */
    static Chart of(
            String id, String title, String description, Axis x, Axis y, List<Series> series) {
        return new Chart(
                id,
                title,
                description,
                HEIGHT,
                x,
                y,
                series,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null);
    }

    /** The same chart with other shaded stretches. */
    Chart withBands(List<Band> newBands) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                newBands,
                rules,
                marks,
                limits,
                told,
                sides);
    }

    /** The same chart with other horizontal lines. */
    Chart withRules(List<Rule> newRules) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                bands,
                newRules,
                marks,
                limits,
                told,
                sides);
    }

    /** The same chart with other labelled points. */
    Chart withMarks(List<Mark> newMarks) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                bands,
                rules,
                newMarks,
                limits,
                told,
                sides);
    }

    /** The same chart with other borders of limits. */
    Chart withLimits(List<LimitLine> newLimits) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                bands,
                rules,
                marks,
                newLimits,
                told,
                sides);
    }

    /** The same chart with curves of its own to be read off it. */
    Chart withTold(List<Series> newTold) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                bands,
                rules,
                marks,
                limits,
                newTold,
                sides);
    }

    /** The same chart whose curves can be hidden by sides. */
    Chart withSides(Sides newSides) {
        return new Chart(
                id,
                title,
                description,
                height,
                x,
                y,
                series,
                bands,
                rules,
                marks,
                limits,
                told,
                newSides);
    }

    /** The same chart with another height. */
    Chart withHeight(int newHeight) {
        return new Chart(
                id,
                title,
                description,
                newHeight,
                x,
                y,
                series,
                bands,
                rules,
                marks,
                limits,
                told,
                sides);
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
     * @param decimals how many decimals of y are told
     * @param label what is written beside it
     * @param look colour of the point
     * @param stem whether a line goes down from it to the x axis
     */
    record Mark(double x, double y, int decimals, String label, Look look, boolean stem) {}

    /**
     * A border that curves must not cross, straight from corner to corner.
     *
     * @param x places of the corners on the x axis, in their order
     * @param y places of the corners on the y axis, as many
     * @param isUpper whether what lies above fails, else what lies below
     * @param label what it is, or an empty text for none
     */
    record LimitLine(double[] x, double[] y, boolean isUpper, String label) {}

    /**
     * Two sides of a comparison, of which the reader may hide one.
     *
     * @param second name of what is drawn in the second look ({@link Look#LEFT_SECOND})
     * @param first name of what is drawn in the first look
     */
    record Sides(String second, String first) {}
}
