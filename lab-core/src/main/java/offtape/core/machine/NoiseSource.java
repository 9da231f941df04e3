package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.random.NormalDraws;

/** Gaussian noise of a shape, sample after sample. */
final class NoiseSource {

    private final NormalDraws random;
    private final double deviation;
    private final Upsampler filter;
    private final double[] chunk;
    private double[] ready = new double[0];
    private int used;

    NoiseSource(NoiseShape shape, SplittableRandom random) {
        BlockGeometry blocks = BlockGeometry.at(shape.rateHz());
        this.random = new NormalDraws(random);
        this.deviation = shape.deviation();
        this.filter = shape.filter() == null ? null : new Upsampler(blocks, 1, shape.filter());
        this.chunk = new double[blocks.chunk()];
        if (filter != null) {
            refill(); // the first chunk starts from silence and is left out
        }
    }

    /** Adds the next {@code count} samples. */
    void add(double[] samples, int count) {
        if (filter == null) {
            for (int i = 0; i < count; i++) {
                samples[i] += deviation * random.next();
            }
            return;
        }
        for (int i = 0; i < count; i++) {
            if (used == ready.length) {
                refill();
            }
            samples[i] += ready[used++];
        }
    }

    private void refill() {
        for (int i = 0; i < chunk.length; i++) {
            chunk[i] = deviation * random.next();
        }
        boolean first = ready.length == 0;
        ready = filter.next(chunk);
        used = first ? ready.length : 0;
    }
}
