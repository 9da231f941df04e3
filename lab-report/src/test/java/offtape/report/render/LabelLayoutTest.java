package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class LabelLayoutTest {

    private static final Box AREA = new Box(0, 0, 500, 300);

    @Test
    void crowdedLabelsKeepApart() {
        LabelLayout layout = new LabelLayout(AREA, List.of());
        for (int i = 0; i < 6; i++) {
            layout.addPoint("12.5 kHz", 250 + i, 150, "left");
        }
        List<Label> labels = layout.labels();
        for (int i = 0; i < labels.size(); i++) {
            assertTrue(AREA.contains(labels.get(i).box()), labels.get(i).toString());
            for (int k = 0; k < i; k++) {
                assertFalse(labels.get(i).box().overlaps(labels.get(k).box()), i + " on " + k);
            }
        }
    }

    @Test
    void labelsInCornersStayInside() {
        LabelLayout layout = new LabelLayout(AREA, List.of());
        layout.addPoint("upper left", 0, 0, "left");
        layout.addPoint("lower right", 500, 300, "left");
        layout.labels().forEach(l -> assertTrue(AREA.contains(l.box()), l.toString()));
    }

    /** Two curves that part on the right: the label of each belongs where they are apart. */
    @Test
    void curvesAreNamedWhereTheyPart() {
        List<PathData.Point> straight =
                IntStream.range(0, 100).mapToObj(i -> new PathData.Point(i * 5, 150)).toList();
        List<PathData.Point> falling =
                IntStream.range(0, 100)
                        .mapToObj(i -> new PathData.Point(i * 5, 150 + Math.max(0, i - 50) * 2))
                        .toList();
        LabelLayout layout = new LabelLayout(AREA, List.of(straight, falling));
        layout.addCurve("one", 0, "left");
        layout.addCurve("two", 1, "right");
        layout.labels().forEach(l -> assertTrue(l.anchorX() > 250, l.toString()));
    }

    /** However many curves a free place covers, no label lies on another. */
    @Test
    void labelsRatherCoverCurvesThanEachOther() {
        List<List<PathData.Point>> dense =
                IntStream.range(0, 40)
                        .mapToObj(
                                k ->
                                        IntStream.range(0, 170)
                                                .mapToObj(i -> new PathData.Point(i * 3, 7 * k))
                                                .toList())
                        .toList();
        LabelLayout layout = new LabelLayout(AREA, dense);
        layout.addPoint("one of two peaks", 250, 20, "left");
        layout.addPoint("the other of them", 252, 20, "right");
        List<Label> labels = layout.labels();
        assertFalse(labels.get(0).box().overlaps(labels.get(1).box()));
    }

    /**
     * Beside the left edge long names have room above, below and on one side only: below and above
     * each other eleven fit, so more have to stand further off.
     */
    @Test
    void manyLabelsNearAnEdgeKeepApart() {
        LabelLayout layout = new LabelLayout(AREA, List.of());
        for (int i = 0; i < 14; i++) {
            layout.addPoint("R peak 48.6 Hz", 79, 64, "right");
        }
        List<Label> labels = layout.labels();
        for (int i = 0; i < labels.size(); i++) {
            for (int k = 0; k < i; k++) {
                assertFalse(labels.get(i).box().overlaps(labels.get(k).box()), i + " on " + k);
            }
        }
    }

    /** Two sessions of one day: their curve stands on the frame. */
    @Test
    void aCurveOnTheFrameIsNamed() {
        List<PathData.Point> edge =
                IntStream.range(0, 30).mapToObj(i -> new PathData.Point(0, 60 + i * 3)).toList();
        LabelLayout layout = new LabelLayout(AREA, List.of(edge));
        layout.addCurve("left", 0, "left");
        assertTrue(AREA.contains(layout.labels().get(0).box()));
    }

    @Test
    void labelsLeaveCurvesUncovered() {
        List<PathData.Point> line =
                IntStream.range(0, 170).mapToObj(i -> new PathData.Point(i * 3, 150)).toList();
        LabelLayout layout = new LabelLayout(AREA, List.of(line));
        layout.addPoint("on the line", 250, 150, "left");
        layout.addRule("beside it", 152);
        layout.addCurve("the line itself", 0, "left");
        for (Label label : layout.labels()) {
            assertFalse(
                    line.stream().anyMatch(p -> label.box().contains(p.x(), p.y())),
                    label.toString());
        }
    }
}
