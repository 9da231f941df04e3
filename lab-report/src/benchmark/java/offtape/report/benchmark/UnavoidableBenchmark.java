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

/**
 * What cannot be avoided in measuring a return of a little over three minutes: its file decoded
 * once, and the transforms of {@link Unavoidable}. The ratio of {@link WholeMeasurementBenchmark}
 * to this, in processor time, says what the figures cost beyond.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class UnavoidableBenchmark {

    private SimulatedFiles files;
    private Unavoidable transforms;

    @Setup
    public void write() {
        SimulatedReturn simulated = SimulatedReturn.make();
        files = SimulatedFiles.write(simulated.recording());
        transforms = new Unavoidable(simulated.located());
    }

    @TearDown
    public void remove() {
        files.close();
    }

    @Benchmark
    public double decodedAndTransformed() {
        return transforms.transform(SimulatedFiles.samples(files.wav()));
    }
}
