package offtape.core.music;

/**
 * Random numbers that are found by their place instead of one after another, so that any stretch of
 * a piece can be made alone. The mixing is that of a 64-bit finaliser (two multiplications and
 * shifts, as {@link java.util.SplittableRandom} does).
 *
 * @param seed which sequence
 */
record Draw(long seed) {

    private static final double UNIT = 0x1.0p-53;

    /** Another sequence for another purpose. */
    Draw of(long purpose) {
        return new Draw(mixed(seed * 0x9E3779B97F4A7C15L + purpose));
    }

    /** A number from 0 to below 1, evenly spread. */
    double at(long place) {
        return (mixed(seed + place * 0x9E3779B97F4A7C15L) >>> 11) * UNIT;
    }

    /** A number from −1 to below 1, evenly spread. */
    double around(long place) {
        return 2 * at(place) - 1;
    }

    /** One of the numbers from 0 to below a bound. */
    int choice(long place, int bound) {
        return (int) (at(place) * bound);
    }

    private static long mixed(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
