package offtape.report.render;

/**
 * A limit as a line with teeth on the side that fails, so that it is told from curves and from the
 * grid without colour.
 */
final class LimitPath {

    /** From tooth to tooth, drawing units. */
    private static final double PITCH = 9;

    private static final double TOOTH = 5;

    private LimitPath() {}

    /** The line and its teeth. */
    static Markup of(Chart.LimitLine limit, Chart chart, Plot plot) {
        return new Markup()
                .empty("path", "class", "limit", "d", line(limit, chart, plot).data())
                .empty("path", "class", "limit teeth", "d", teeth(limit, chart, plot).data());
    }

    /** The teeth alone. */
    static PathData teeth(Chart.LimitLine limit, Chart chart, Plot plot) {
        PathData teeth = new PathData();
        for (int i = 1; i < limit.x().length; i++) {
            addTeeth(
                    teeth,
                    x(limit, i - 1, chart, plot),
                    y(limit, i - 1, chart, plot),
                    x(limit, i, chart, plot),
                    y(limit, i, chart, plot),
                    limit.isUpper());
        }
        return teeth;
    }

    /** The line alone. */
    static PathData line(Chart.LimitLine limit, Chart chart, Plot plot) {
        PathData line = new PathData();
        for (int i = 0; i < limit.x().length; i++) {
            double x = x(limit, i, chart, plot);
            double y = y(limit, i, chart, plot);
            if (i == 0) {
                line.moveTo(x, y);
            } else {
                line.lineTo(x, y);
            }
        }
        return line;
    }

    /** Names the longest level piece. */
    static void addLabel(Chart.LimitLine limit, Chart chart, Plot plot, LabelLayout layout) {
        int longest = 1;
        for (int i = 1; i < limit.x().length; i++) {
            longest =
                    width(limit, i, chart, plot) > width(limit, longest, chart, plot) ? i : longest;
        }
        layout.addRule(
                limit.label(),
                x(limit, longest - 1, chart, plot),
                x(limit, longest, chart, plot),
                y(limit, longest, chart, plot));
    }

    private static double width(Chart.LimitLine limit, int i, Chart chart, Plot plot) {
        return Math.abs(x(limit, i, chart, plot) - x(limit, i - 1, chart, plot));
    }

    /** Teeth lean along a level piece and stand off an upright one to the left, where it fails. */
    private static void addTeeth(
            PathData teeth, double fromX, double fromY, double toX, double toY, boolean isUpper) {
        double length = Math.hypot(toX - fromX, toY - fromY);
        boolean isLevel = Math.abs(toX - fromX) >= Math.abs(toY - fromY);
        double dy = isLevel && !isUpper ? TOOTH : -TOOTH;
        double dx = isLevel ? TOOTH : -TOOTH;
        for (double at = PITCH / 2; at < length; at += PITCH) {
            double x = fromX + at / length * (toX - fromX);
            double y = fromY + at / length * (toY - fromY);
            teeth.moveTo(x, y);
            teeth.lineTo(x + dx, y + dy);
        }
    }

    private static double x(Chart.LimitLine limit, int i, Chart chart, Plot plot) {
        Axis axis = chart.x();
        return plot.x(Math.max(axis.min(), Math.min(axis.max(), limit.x()[i])));
    }

    private static double y(Chart.LimitLine limit, int i, Chart chart, Plot plot) {
        Axis axis = chart.y();
        return plot.y(Math.max(axis.min(), Math.min(axis.max(), limit.y()[i])));
    }
}
