package offtape.core.model;

/**
 * Random numbers by their place in a sequence, so that any stretch of noise can be made alone: the
 * mixing function of SplittableRandom (Steele, Lea, Flood 2014) over seed and place.
 */
final class Draws {

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final double UNIT = 0x1.0p-53;

    private Draws() {}

    /** A normal number of mean 0 and variance 1 (Box and Muller). */
    static double normal(long seed, long place) {
        double radius = Math.sqrt(-2 * Math.log(uniform(seed, 2 * place)));
        return radius * Math.cos(2 * Math.PI * uniform(seed, 2 * place + 1));
    }

    /** A number above 0, up to 1. */
    static double uniform(long seed, long place) {
        return ((mixed(mixed(seed) + GOLDEN * place) >>> 11) + 1) * UNIT;
    }

    private static long mixed(long value) {
        long z = value + GOLDEN;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
