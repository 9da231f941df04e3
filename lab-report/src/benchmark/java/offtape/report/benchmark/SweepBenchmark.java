package offtape.report.benchmark;

import java.util.concurrent.TimeUnit;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedHarmonics;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.HarmonicFollower;
import offtape.report.measure.sweep.SweepFollower;
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

/** One sweep of 12 s followed through both channels of a return, and its harmonics. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SweepBenchmark {

    private ProgrammeReturn ret;
    private Cue.Sweep sweep;

    @Setup
    public void locate() {
        ret = SimulatedReturn.make().located();
        sweep = ret.cues(Cue.Sweep.class).get(0);
    }

    @Benchmark
    public FollowedSweep response() {
        return new SweepFollower(sweep, ret.sheet().sampleRateHz()).follow(ret);
    }

    @Benchmark
    public FollowedHarmonics harmonics() {
        return HarmonicFollower.followLoudest(ret).orElseThrow();
    }
}
