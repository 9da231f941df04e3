package offtape.report.benchmark;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import offtape.core.dsp.PowerDensity;
import offtape.core.standard.Iec61672;
import offtape.core.standard.ItuBs468;
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

/** What the noise of a silence of 10 s at 48 kHz is read with, one channel. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class NoiseWeightingBenchmark {

    private static final int SECONDS = 10;
    private static final int LONGEST = 1 << 14;

    private double[] noise;
    private PowerDensity density;
    private ItuBs468 meter;

    @Setup
    public void noise() {
        noise =
                new SplittableRandom(468)
                        .doubles(SECONDS * SimulatedReturn.RATE_HZ, -1, 1)
                        .map(v -> 1e-3 * v)
                        .toArray();
        density = PowerDensity.of(noise, SimulatedReturn.RATE_HZ, LONGEST);
        meter = ItuBs468.atRate(SimulatedReturn.RATE_HZ);
    }

    /** The design of the filter alone. */
    @Benchmark
    public ItuBs468 quasiPeakMeter() {
        return ItuBs468.atRate(SimulatedReturn.RATE_HZ);
    }

    @Benchmark
    public double quasiPeakReading() {
        return meter.quasiPeak(noise);
    }

    @Benchmark
    public PowerDensity density() {
        return PowerDensity.of(noise, SimulatedReturn.RATE_HZ, LONGEST);
    }

    /** A-weighted power out of a density that is known. */
    @Benchmark
    public double aWeighted() {
        return density.power(22.4, 22_400, f -> f > 0 ? gain(f) : 0);
    }

    private static double gain(double hertz) {
        return Math.pow(10, Iec61672.aWeightingDb(hertz) / 10);
    }
}
