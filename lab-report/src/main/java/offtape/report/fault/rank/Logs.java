package offtape.report.fault.rank;

import java.util.stream.DoubleStream;

/** Sums of what is known by its logarithm. */
final class Logs {

    private Logs() {}

    /** Logarithm of the sum, without overflow. */
    static double sum(DoubleStream logs) {
        double[] all = logs.toArray();
        double top = DoubleStream.of(all).max().orElse(Double.NEGATIVE_INFINITY);
        return top + Math.log(DoubleStream.of(all).map(l -> Math.exp(l - top)).sum());
    }
}
