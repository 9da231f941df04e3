package offtape.report.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Every sample of a return of a little over three minutes, 24 bit stereo, out of its file. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DecodeBenchmark {

    private SimulatedFiles files;

    @Setup
    public void write() {
        files = SimulatedFiles.write(SimulatedReturn.make().recording());
    }

    @TearDown
    public void remove() {
        files.close();
    }

    @Benchmark
    public double[][] wav() {
        return SimulatedFiles.samples(files.wav());
    }

    @Benchmark
    public double[][] flac() {
        return SimulatedFiles.samples(files.flac());
    }
}
