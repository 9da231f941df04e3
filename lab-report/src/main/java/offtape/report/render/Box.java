package offtape.report.render;

/** A rectangle on a drawing, in its units; y grows downwards. */
record Box(double left, double top, double right, double bottom) {

    /** Whether the two have more than an edge in common. */
    boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    /** Whether {@code other} lies wholly inside. */
    boolean contains(Box other) {
        return other.left >= left
                && other.right <= right
                && other.top >= top
                && other.bottom <= bottom;
    }

    /** Whether a place lies inside. */
    boolean contains(double x, double y) {
        return x > left && x < right && y > top && y < bottom;
    }
}
