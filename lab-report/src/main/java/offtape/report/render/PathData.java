package offtape.report.render;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The path of a curve in tenths of a drawing unit, written as short as SVG allows: relative steps,
 * and no new start where the pen already is.
 */
final class PathData {

    private final StringBuilder out = new StringBuilder();
    private final List<Point> points = new ArrayList<>();
    private long penX = Long.MIN_VALUE;
    private long penY = Long.MIN_VALUE;

    /**
     * A corner of the path.
     *
     * @param x drawing units from the left
     * @param y drawing units from the top
     */
    record Point(double x, double y) {}

    /** Puts the pen down at a place. */
    void moveTo(double x, double y) {
        long newX = tenths(x);
        long newY = tenths(y);
        if (newX != penX || newY != penY) {
            out.append('M').append(pair(newX, newY));
            pen(newX, newY);
        }
    }

    /** Draws a straight line to a place. */
    void lineTo(double x, double y) {
        long newX = tenths(x);
        long newY = tenths(y);
        if (newX != penX || newY != penY) {
            out.append('l').append(pair(newX - penX, newY - penY));
            pen(newX, newY);
        }
    }

    /** Ends a filled outline. */
    void closePath() {
        out.append('z');
    }

    /** The corners in their order. */
    List<Point> points() {
        return List.copyOf(points);
    }

    /**
     * Points along the path, none further than {@code step} apart, and no more than one in each
     * square of that size: what labels should not cover.
     */
    List<Point> dense(double step) {
        Map<Point, Point> bySquare = new LinkedHashMap<>();
        Point last = null;
        for (Point p : points) {
            double length = last == null ? 0 : Math.hypot(p.x - last.x, p.y - last.y);
            for (double at = step; at < length; at += step) {
                double x = last.x + at / length * (p.x - last.x);
                double y = last.y + at / length * (p.y - last.y);
                keep(new Point(x, y), step, bySquare);
            }
            keep(p, step, bySquare);
            last = p;
        }
        return List.copyOf(bySquare.values());
    }

    private static void keep(Point p, double step, Map<Point, Point> bySquare) {
        bySquare.putIfAbsent(new Point(Math.floor(p.x / step), Math.floor(p.y / step)), p);
    }

    /** The {@code d} attribute; a single point becomes a line of no length, seen by its caps. */
    String data() {
        return points.size() == 1 ? out + "h0" : out.toString();
    }

    private void pen(long x, long y) {
        penX = x;
        penY = y;
        points.add(new Point(x / 10.0, y / 10.0));
    }

    private static String pair(long x, long y) {
        return number(x) + (y < 0 ? "" : " ") + number(y);
    }

    private static String number(long tenths) {
        return tenths % 10 == 0
                ? Long.toString(tenths / 10)
                : BigDecimal.valueOf(tenths, 1).toPlainString();
    }

    private static long tenths(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a path has finite places");
        }
        return Math.round(value * 10);
    }
}
