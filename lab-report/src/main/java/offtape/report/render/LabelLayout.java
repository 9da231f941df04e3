package offtape.report.render;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds places for labels so that they cover neither each other nor the curves: each label tries
 * the places around its anchor and takes the cheapest. Labels placed first have the first choice.
 */
final class LabelLayout {

    private static final double[] DISTANCES = {10, 20, 34, 50, 70, 95, 125, 160, 200, 240};
    private static final double[] SHIFTS = {0, -0.55, 0.55, -1.1, 1.1};
    private static final int RULE_PLACES = 12;

    /** Dearer than any length of curves that a label could cover. */
    private static final double OVERLAP = 100_000;

    private static final double CROSSED_LABEL = 800;
    private static final double COVERED_POINT = 30;
    private static final double CROSSED_POINT = 60;
    private static final double NEIGHBOUR_BONUS = 9;
    private static final double NEIGHBOUR_LIMIT = 14;

    /** How far outside the area a curve may run that is labelled: it lies on the frame then. */
    private static final double EDGE = 3;

    private final Box area;
    private final Box edge;
    private final List<List<PathData.Point>> curves;
    private final List<Box> taken = new ArrayList<>();
    private final List<Box> leaders = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    /** A layout in {@code area}; {@code curves} are dense points that should stay visible. */
    LabelLayout(Box area, List<List<PathData.Point>> curves) {
        this.area = area;
        this.edge =
                new Box(
                        area.left() - EDGE,
                        area.top() - EDGE,
                        area.right() + EDGE,
                        area.bottom() + EDGE);
        this.curves = curves;
    }

    /** The labels placed so far. */
    List<Label> labels() {
        return List.copyOf(labels);
    }

    /** Keeps labels off a rectangle. */
    void reserve(Box box) {
        taken.add(box);
    }

    /** Places a label for a point. */
    void addPoint(String text, double x, double y, String cssClass) {
        settle(cheapest(candidates(text, x, y, cssClass, false), 0, -1).label);
    }

    /** Places a label on a horizontal line across the plot at the part that has most room. */
    void addRule(String text, double y) {
        addRule(text, area.left(), area.right(), y);
    }

    /** Places a label on a horizontal line from left to right at the part that has most room. */
    void addRule(String text, double left, double right, double y) {
        List<Label> candidates = new ArrayList<>();
        double half = Label.width(text) / 2;
        double from = Math.max(area.left(), left) + half + 4;
        double to = Math.max(from, Math.min(area.right(), right) - half - 4);
        for (int i = 0; i <= RULE_PLACES; i++) {
            double x = from + (to - from) * i / RULE_PLACES;
            candidates.add(new Label(text, x, y - 5, x, y - 5, "rule-label", false));
            candidates.add(new Label(text, x, y + 16, x, y + 16, "rule-label", false));
        }
        settle(cheapest(candidates, 0, -1).label);
    }

    /** Places a label for a curve where the curve keeps clear of the others. */
    void addCurve(String text, int curve, String cssClass) {
        Choice best = null;
        for (PathData.Point p : everySome(curves.get(curve))) {
            double bonus = -NEIGHBOUR_BONUS * Math.min(NEIGHBOUR_LIMIT, distanceToOthers(p, curve));
            Choice choice = cheapest(candidates(text, p.x(), p.y(), cssClass, true), bonus, curve);
            best = best == null || choice.cost < best.cost ? choice : best;
        }
        if (best != null) {
            settle(best.label);
        }
    }

    private record Choice(Label label, double cost) {}

    private void settle(Label label) {
        labels.add(label);
        taken.add(label.box());
        if (label.needsLeader()) {
            leaders.add(leader(label));
        }
    }

    /**
     * The cheapest candidate; candidates that are dear without their curves are not looked into.
     */
    private Choice cheapest(List<Label> candidates, double bonus, int own) {
        Choice best = null;
        for (Label label : candidates) {
            double cost = bonus + roomCost(label);
            if (best == null || cost < best.cost) {
                cost += curveCost(label, label.box(), own);
                best = best == null || cost < best.cost ? new Choice(label, cost) : best;
            }
        }
        return best;
    }

    private static List<Label> candidates(
            String text, double x, double y, String cssClass, boolean sample) {
        List<Label> found = new ArrayList<>();
        double width = Label.width(text, sample);
        for (double distance : DISTANCES) {
            for (double shift : SHIFTS) {
                double textX = x + shift * width;
                found.add(new Label(text, textX, y - distance, x, y, cssClass, sample));
                found.add(new Label(text, textX, y + distance + 12, x, y, cssClass, sample));
            }
        }
        found.add(new Label(text, x + width / 2 + 8, y + 5, x, y, cssClass, sample));
        found.add(new Label(text, x - width / 2 - 8, y + 5, x, y, cssClass, sample));
        return found;
    }

    private double roomCost(Label label) {
        Box box = label.box();
        double cost = Math.hypot(label.x() - label.anchorX(), label.y() - 5 - label.anchorY());
        cost += area.contains(box) ? 0 : OVERLAP;
        Box leader = leader(label);
        for (Box other : taken) {
            cost += box.overlaps(other) ? OVERLAP : 0;
            boolean own = other.contains(label.anchorX(), label.anchorY());
            cost += !own && label.needsLeader() && leader.overlaps(other) ? CROSSED_LABEL : 0;
        }
        for (Box other : leaders) {
            cost += box.overlaps(other) ? CROSSED_LABEL : 0;
        }
        return cost;
    }

    private double curveCost(Label label, Box box, int own) {
        double cost = 0;
        Box leader = leader(label);
        for (int i = 0; i < curves.size(); i++) {
            for (PathData.Point p : curves.get(i)) {
                cost += box.contains(p.x(), p.y()) ? COVERED_POINT : 0;
                cost += i != own && leader.contains(p.x(), p.y()) ? CROSSED_POINT : 0;
            }
        }
        return cost;
    }

    /** A narrow rectangle around the leader, without its last bit at the curve itself. */
    private static Box leader(Label label) {
        double from = label.leaderY();
        double to = label.anchorY() + (label.anchorY() > from ? -4 : 4);
        return new Box(
                Math.min(label.leaderX(), label.anchorX()) - 2,
                Math.min(from, to),
                Math.max(label.leaderX(), label.anchorX()) + 2,
                Math.max(from, to));
    }

    private List<PathData.Point> everySome(List<PathData.Point> curve) {
        List<PathData.Point> inside =
                curve.stream().filter(p -> edge.contains(p.x(), p.y())).toList();
        int step = Math.max(1, inside.size() / 30);
        List<PathData.Point> some = new ArrayList<>();
        for (int i = step / 2; i < inside.size(); i += step) {
            some.add(inside.get(i));
        }
        return some;
    }

    private double distanceToOthers(PathData.Point p, int own) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < curves.size(); i++) {
            if (i != own) {
                for (PathData.Point q : curves.get(i)) {
                    least = Math.min(least, Math.hypot(p.x() - q.x(), p.y() - q.y()));
                }
            }
        }
        return least;
    }
}
