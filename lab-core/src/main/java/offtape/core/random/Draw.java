package offtape.core.random;

/**
 * Random numbers that are found by their place instead of one after another, so that any stretch of
 * sound can be made alone. The mixing is that of a 64-bit finaliser (two multiplications and
 * shifts, as {@link java.util.SplittableRandom} does).
 *
 * @param seed which sequence
 */
public record Draw(long seed) {

    private static final double UNIT = 0x1.0p-53;

    /** A sequence that has nothing in common with those of neighbouring seeds. */
    public static Draw ofSeed(long seed) {
        return new Draw(1).of(seed);
    }

    /** Another sequence for another purpose. */
    public Draw of(long purpose) {
        return new Draw(mixed(seed * 0x9E3779B97F4A7C15L + purpose));
    }

    /** A number from 0 to below 1, evenly spread. */
    public double at(long place) {
        return (mixed(seed + place * 0x9E3779B97F4A7C15L) >>> 11) * UNIT;
    }

    /** A number from −1 to below 1, evenly spread. */
    public double around(long place) {
        return 2 * at(place) - 1;
    }

    /** One of the numbers from 0 to below a bound. */
    public int choice(long place, int bound) {
        return (int) (at(place) * bound);
    }

    /** A normal number of mean 0 and variance 1 (Box and Muller), from two places of its own. */
    public double normal(long place) {
        double radius = Math.sqrt(-2 * Math.log(aboveZero(2 * place)));
        return radius * Math.cos(2 * Math.PI * aboveZero(2 * place + 1));
    }

    /** A number above 0, up to 1, evenly spread. */
    private double aboveZero(long place) {
        return at(place + 1) + UNIT;
    }

    private static long mixed(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
