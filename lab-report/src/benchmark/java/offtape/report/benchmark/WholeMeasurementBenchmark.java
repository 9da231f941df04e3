package offtape.report.benchmark;

import java.util.concurrent.TimeUnit;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.report.result.Results;
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
 * Every figure of a return of a little over three minutes: locating and measuring, without charts
 * and files. In memory it is computing alone; from the file it also decodes, as often as the
 * measures read, and is what {@link UnavoidableBenchmark} is held against.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WholeMeasurementBenchmark {

    private SimulatedReturn simulated;
    private SimulatedFiles files;

    @Setup
    public void write() {
        simulated = SimulatedReturn.make();
        files = SimulatedFiles.write(simulated.recording());
    }

    @TearDown
    public void remove() {
        files.close();
    }

    @Benchmark
    public Results inMemory() {
        return simulated.measure(simulated.recording());
    }

    @Benchmark
    public Results fromFile() {
        try (AudioSource sound = AudioFiles.open(files.wav())) {
            return simulated.measure(sound);
        }
    }
}
