package offtape.core.standard;

import java.util.Arrays;
import java.util.stream.DoubleStream;
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

    /** All results of a running filter, fed in blocks of uneven length. */
    static double[] through(RunningFilter filter, double[] x) {
        DoubleStream.Builder results = DoubleStream.builder();
        int from = 0;
        for (int length = 1; from < x.length; length = 3 * length + 7) {
            int to = Math.min(x.length, from + length);
            Arrays.stream(filter.next(Arrays.copyOfRange(x, from, to))).forEach(results::add);
            from = to;
        }
        Arrays.stream(filter.rest()).forEach(results::add);
        return results.build().toArray();
    }

    static double[] weighted(Iec60386 meter, double[] x) {
        return through(meter.band(FlutterBand.WEIGHTED), x);
    }

    /** The highest settled reading of a weighted or unweighted deviation. */
    static double highestReading(Iec60386 meter, double[] filtered) {
        double[] reading = through(meter.quasiPeak(), filtered);
        return Arrays.stream(meter.settled().next(reading)).max().orElseThrow();
    }

    static double rms(double[] x) {
        double squares = 0;
        for (double v : x) {
            squares += v * v;
        }
        return Math.sqrt(squares / x.length);
    }
}
