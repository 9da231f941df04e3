package offtape.core.standard;

import java.util.stream.IntStream;

/** Signals of the checks. */
final class Signals {

    private Signals() {}

    /** A sine of peak 1. */
    static double[] sine(double frequencyHz, double seconds, double sampleRateHz) {
        double step = 2 * Math.PI * frequencyHz / sampleRateHz;
        return IntStream.range(0, (int) Math.round(seconds * sampleRateHz))
                .mapToDouble(i -> Math.sin(step * i))
                .toArray();
    }

    static double rms(double[] x) {
        double squares = 0;
        for (double v : x) {
            squares += v * v;
        }
        return Math.sqrt(squares / x.length);
    }
}
