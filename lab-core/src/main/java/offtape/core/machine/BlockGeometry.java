package offtape.core.machine;

import java.util.Arrays;

/**
 * How long stretches are filtered by transforms: each takes {@code transform} samples at the
 * programme's rate, of which {@code chunk} are new, so that filters reach {@code reach} samples to
 * either side. Scaled with the sample rate so that the reach in seconds stays.
 *
 * @param transform samples of a transform, a power of two
 * @param chunk new samples of each
 * @param reach samples by which the output lags behind the input
 */
record BlockGeometry(int transform, int chunk, int reach) {

    private static final int TRANSFORM = 8192;
    private static final int REACH = 512;
    private static final double BASE_RATE_HZ = 48_000;

    static BlockGeometry at(double sampleRateHz) {
        int scale = 1;
        while (scale * BASE_RATE_HZ < 0.99 * sampleRateHz) {
            scale *= 2;
        }
        return new BlockGeometry(scale * TRANSFORM, scale * (TRANSFORM - 2 * REACH), scale * REACH);
    }

    /** Moves a window on by a chunk. */
    void shift(double[] window, double[] next) {
        System.arraycopy(window, chunk, window, 0, transform - chunk);
        System.arraycopy(next, 0, window, transform - chunk, chunk);
    }

    /** The part of a filtered window, at a multiple of its rate, that no filter's ends reach. */
    double[] middle(double[] filtered, int factor) {
        return Arrays.copyOfRange(filtered, factor * reach, factor * (reach + chunk));
    }
}
