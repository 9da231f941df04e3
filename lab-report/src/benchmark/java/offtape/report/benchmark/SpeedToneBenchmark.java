package offtape.report.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.measure.speed.ToneReading;
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

/** The long tone of a return: its demodulation alone, and all that is read of it. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SpeedToneBenchmark {

    private static final double PASS_HZ = 250;
    private static final double VALUES_HZ = 1000;

    private ProgrammeReturn ret;
    private ProgrammeReturn.Span span;
    private PhaseLaw law;

    @Setup
    public void locate() {
        ret = SimulatedReturn.make().located();
        Cue.Tone tone =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.id().equals("speed"))
                        .findFirst()
                        .orElseThrow();
        span = ret.span(tone.startFrame(), tone.frames(), 0.1);
        law =
                PhaseLaw.steady(
                        tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames()));
    }

    @Benchmark
    public List<Baseband> demodulation() {
        return Downconverter.of(PASS_HZ, 2 * PASS_HZ, SimulatedReturn.RATE_HZ, VALUES_HZ)
                .convert(ret.recording(), span.from(), span.to(), law);
    }

    @Benchmark
    public ToneReading everyReading() {
        return SpeedTone.measure(ret);
    }
}
