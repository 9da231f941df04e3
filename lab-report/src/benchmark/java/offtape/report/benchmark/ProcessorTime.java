package offtape.report.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Processor time of the whole process for one run of a benchmark, all its threads, compiler and
 * collector together. Unlike time by the clock it holds on a machine that others use too.
 */
public final class ProcessorTime implements InternalProfiler {

    /** The name that the figure goes by in JMH's results. */
    public static final String NAME = "processor";

    private final OperatingSystemMXBean system =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private long before;

    @Override
    public String getDescription() {
        return "processor time for one run";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = system.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double runs = Math.max(1, result.getMetadata().getMeasuredOps());
        double milliseconds = 1e-6 * (system.getProcessCpuTime() - before) / runs;
        return List.of(new ScalarResult(NAME, milliseconds, "ms/op", AggregationPolicy.AVG));
    }
}
