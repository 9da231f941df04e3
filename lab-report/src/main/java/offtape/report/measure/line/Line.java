package offtape.report.measure.line;

/**
 * A sine whose frequency is steady or moves as that of a reel does. Time counts from the middle of
 * the stretch.
 *
 * <p>A reel whose pack has the radius r turns at f = v/(2π·r), and r² changes evenly with time, by
 * the tape's thickness h times v/π a second. So f(t) = f₀/√(1 + b·t) with b = ±h·v/(π·r₀²), and the
 * phase is 2π·f₀·u(t) with u = 2t/(1 + √(1 + b·t)). For b = 0 the line is steady.
 *
 * @param hz frequency in the middle, f₀
 * @param bend b, 1/s; positive for a pack that grows and slows down
 * @param re factor of the cosine, percent
 * @param im factor of the sine, percent
 */
record Line(double hz, double bend, double re, double im) {

    /** Peak value, percent. */
    double peak() {
        return Math.hypot(re, im);
    }

    /** Frequency at a time, Hz. */
    double hzAt(double seconds) {
        return hz / Math.sqrt(1 + bend * seconds);
    }

    /** The time that runs as the part turns: u(t). */
    static double turned(double seconds, double bend) {
        return 2 * seconds / (1 + Math.sqrt(1 + bend * seconds));
    }

    /** The inverse of {@link #turned}. */
    static double seconds(double turned, double bend) {
        return turned * (1 + bend * turned / 4);
    }

    /** The change of u with b, ∂u/∂b = −t²/(√(1 + b·t)·(1 + √(1 + b·t))²). */
    static double turnedByBend(double seconds, double bend) {
        double root = Math.sqrt(1 + bend * seconds);
        return -seconds * seconds / (root * (1 + root) * (1 + root));
    }

    /** Whether the frequency moves. */
    boolean moves() {
        return bend != 0;
    }
}
