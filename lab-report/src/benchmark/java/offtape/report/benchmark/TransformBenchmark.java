package offtape.report.benchmark;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import offtape.core.dsp.ComplexFft;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The transforms, from the blocks of a filter to a whole cue. 3 110 400 = 2^9 · 3^5 · 5^2 samples
 * hold 65 s at 48 kHz, which a power of two does with a third more.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class TransformBenchmark {

    @Param({"16384", "65536", "1048576", "3110400", "4194304"})
    private int samples;

    private RealFft real;
    private ComplexFft complex;
    private double[] x;
    private Spectrum spectrum;

    @Setup
    public void noise() {
        SplittableRandom random = new SplittableRandom(samples);
        real = RealFft.ofSize(samples);
        complex = ComplexFft.ofSize(samples / 2);
        x = random.doubles(samples, -1, 1).toArray();
        spectrum = real.forward(x);
    }

    @Benchmark
    public Spectrum realForward() {
        return real.forward(x);
    }

    @Benchmark
    public double[] realInverse() {
        return real.inverse(spectrum);
    }

    /** As many numbers as the real one, in pairs; works in place, so it begins with a copy. */
    @Benchmark
    public double[] complexForward() {
        double[] pairs = x.clone();
        complex.forward(pairs);
        return pairs;
    }
}
