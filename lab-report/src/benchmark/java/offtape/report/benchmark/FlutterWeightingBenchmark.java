package offtape.report.benchmark;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.standard.RunningFilter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The bands and the pointer of the wow-and-flutter meter, over the deviation of 65 s of tone. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class FlutterWeightingBenchmark {

    private static final double RATE_HZ = 1000;
    private static final int SECONDS = 65;

    private double[] deviation;
    private Iec60386 meter;

    @Setup
    public void deviation() {
        int values = (int) (SECONDS * RATE_HZ);
        deviation = new SplittableRandom(60386).doubles(values, -0.1, 0.1).toArray();
        meter = Iec60386.atRate(RATE_HZ);
        meter.band(FlutterBand.WEIGHTED);
        meter.band(FlutterBand.UNWEIGHTED);
    }

    /** The design of the meter and of its band alone. */
    @Benchmark
    public RunningFilter design() {
        return Iec60386.atRate(RATE_HZ).band(FlutterBand.WEIGHTED);
    }

    @Benchmark
    public double[] weighted() {
        return through(meter.band(FlutterBand.WEIGHTED));
    }

    @Benchmark
    public double[] unweighted() {
        return through(meter.band(FlutterBand.UNWEIGHTED));
    }

    @Benchmark
    public double[] pointer() {
        return through(meter.quasiPeak());
    }

    private double[] through(RunningFilter filter) {
        filter.next(deviation);
        return filter.rest();
    }
}
