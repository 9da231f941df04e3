package offtape.report.fault;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/** Draws figures of machines, the same ones from the same seed. */
final class Draws {

    private final SplittableRandom random;

    Draws(SplittableRandom random) {
        this.random = random;
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Evenly on a logarithmic scale. */
    double size(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    double gaussian() {
        RandomGenerator source = random;
        return source.nextGaussian();
    }

    boolean chance(double share) {
        return random.nextDouble() < share;
    }

    int oneOf(int count) {
        return random.nextInt(count);
    }

    /** Text with figures, whatever the locale. */
    static String json(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
