package offtape.report.render;

/**
 * A text with its place.
 *
 * @param text what is written
 * @param x middle of the text and its sample
 * @param y base line
 * @param anchorX the place it speaks of
 * @param anchorY the place it speaks of
 * @param cssClass class of text and leader
 * @param sample whether a piece of the curve is drawn before the text
 */
record Label(
        String text,
        double x,
        double y,
        double anchorX,
        double anchorY,
        String cssClass,
        boolean sample) {

    /** Height of a line of text, for the largest size that the style sheet sets. */
    static final double LINE = 19;

    /** Length of a piece of a curve. */
    static final double SAMPLE = 34;

    private static final double SAMPLE_GAP = 7;
    private static final double WIDTH = 10.6;
    private static final double DESCENT = 4;
    private static final double FAR = 9;

    /** The rectangle that the text takes in the largest size that the style sheet sets. */
    Box box() {
        double half = width(text, sample) / 2;
        return new Box(x - half, y - LINE + DESCENT, x + half, y + DESCENT);
    }

    /** Width set aside for a text and, if wanted, a piece of a curve before it. */
    static double width(String text, boolean sample) {
        return width(text) + (sample ? SAMPLE + SAMPLE_GAP : 0);
    }

    /** Where the text starts if it stands after a sample. */
    double textStart() {
        return box().left() + SAMPLE + SAMPLE_GAP;
    }

    /** Width set aside for a text; generous, since the font is the reader's. */
    static double width(String text) {
        return text.length() * WIDTH + 4;
    }

    /** Whether the text stands so far off that a line should lead to its place. */
    boolean needsLeader() {
        return gap() > FAR;
    }

    /** Where a leader leaves the text: its edge that is nearer to the place. */
    double leaderY() {
        return anchorY > y ? y + DESCENT + 1 : y - LINE + 2 * DESCENT;
    }

    /** Where a leader leaves the text: as near to the place as the text reaches. */
    double leaderX() {
        double half = width(text, sample) / 2 - 10;
        return Math.max(x - Math.max(half, 0), Math.min(x + Math.max(half, 0), anchorX));
    }

    private double gap() {
        Box box = box();
        double dx = Math.max(0, Math.max(box.left() - anchorX, anchorX - box.right()));
        double dy = Math.max(0, Math.max(box.top() - anchorY, anchorY - box.bottom()));
        return Math.hypot(dx, dy);
    }
}
