package offtape.report.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.distortion.LadderMeasure;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
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

/** K2, K3 and compression of one ladder of eighteen tones on both channels. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LadderBenchmark {

    private Cue.Ladder ladder;
    private LadderMeasure measure;

    @Setup
    public void locate() {
        ProgrammeReturn ret = SimulatedReturn.make().located();
        ReferenceLevels reference = ReferenceLevels.measure(ret).orElseThrow();
        ladder = ret.cues(Cue.Ladder.class).get(0);
        measure = new LadderMeasure(ret, reference, new CrosstalkMeasure(ret, reference).leakage());
    }

    @Benchmark
    public List<Distortion> ladder() {
        return measure.measure(ladder);
    }
}
