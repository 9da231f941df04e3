package offtape.report.render;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;

/**
 * Takes down the curves that the chart library draws. Each curve is known by its colour: {@link
 * #colourOf} gives the one to draw curve number i with; whatever comes in any other colour
 * (backgrounds, frames) is left out. Touching segments are joined.
 */
final class CurveGraphics extends SilentGraphics {

    private static final int BASE = 0x10203;

    private final List<PathData> curves = new ArrayList<>();

    CurveGraphics(int count) {
        for (int i = 0; i < count; i++) {
            curves.add(new PathData());
        }
    }

    /** The colour that stands for curve number {@code index}. */
    static Color colourOf(int index) {
        return new Color(BASE + index);
    }

    /** The curves in their order. */
    List<PathData> curves() {
        return List.copyOf(curves);
    }

    @Override
    public void draw(Shape s) {
        record(s);
    }

    @Override
    public void fill(Shape s) {
        record(s);
    }

    private void record(Shape shape) {
        int index = (getColor().getRGB() & 0xFFFFFF) - BASE;
        if (index < 0 || index >= curves.size()) {
            return;
        }
        PathData curve = curves.get(index);
        double[] at = new double[6];
        for (PathIterator it = shape.getPathIterator(null); !it.isDone(); it.next()) {
            switch (it.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> curve.moveTo(at[0], at[1]);
                case PathIterator.SEG_LINETO -> curve.lineTo(at[0], at[1]);
                case PathIterator.SEG_CLOSE -> curve.closePath();
                default -> throw new IllegalStateException("curves are made of straight lines");
            }
        }
    }
}
