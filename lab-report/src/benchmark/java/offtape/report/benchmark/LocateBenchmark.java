package offtape.report.benchmark;

import java.util.concurrent.TimeUnit;
import offtape.report.locate.Location;
import offtape.report.locate.Locator;
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

/** The programme found in a return of a little over three minutes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LocateBenchmark {

    private SimulatedReturn simulated;

    @Setup
    public void simulate() {
        simulated = SimulatedReturn.make();
    }

    @Benchmark
    public Location locate() {
        return Locator.locate(simulated.programme(), simulated.recording());
    }
}
