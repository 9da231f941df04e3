package offtape.core.random;

import java.util.SplittableRandom;

/**
 * Normal numbers of mean 0 and variance 1, one after another, the same on every Java: {@link
 * SplittableRandom#nextGaussian()} is made in another way by different releases. By the polar
 * method (Marsaglia and Bray 1964): of points spread evenly over the square around 0, those within
 * the circle give two independent numbers each. Only sums, products, square roots, which are exact
 * to the last digit by IEEE 754, and the logarithm of {@link StrictMath} are used. Not for several
 * threads.
 */
public final class NormalDraws {

    private final SplittableRandom random;
    private double second;
    private boolean isSecondLeft;

    /**
     * A sequence.
     *
     * @param random where the points come from; nothing else should draw from it meanwhile
     */
    public NormalDraws(SplittableRandom random) {
        this.random = random;
    }

    /** The next number. */
    public double next() {
        if (isSecondLeft) {
            isSecondLeft = false;
            return second;
        }
        double x;
        double y;
        double squared;
        do {
            x = 2 * random.nextDouble() - 1;
            y = 2 * random.nextDouble() - 1;
            squared = x * x + y * y;
        } while (squared >= 1 || squared == 0);
        double stretch = Math.sqrt(-2 * StrictMath.log(squared) / squared);
        second = y * stretch;
        isSecondLeft = true;
        return x * stretch;
    }
}
