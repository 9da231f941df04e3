package offtape.core.realign;

/**
 * A line of wow that is known of a path: lateness that swings at one frequency, its phase kept for
 * some time.
 *
 * @param omega angular frequency, radians a frame
 * @param power mean square of its lateness, frames squared
 * @param memory frames after which phase and strength are another's by 1/e
 */
record WowLine(double omega, double power, double memory) {

    /** The same line that keeps its phase for another time, frames. */
    WowLine lasting(double other) {
        return new WowLine(omega, power, other);
    }
}
