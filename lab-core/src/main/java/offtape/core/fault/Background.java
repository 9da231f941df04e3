package offtape.core.fault;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Work done beside other work, whose failures come out as they went in.
 *
 * <p>All of it shares one pool with a thread a processor; a thread that waits for work of the pool
 * does other work of it meanwhile. The threads never keep the program alive. Results are handed
 * over in the order in which the work was named, so they do not depend on the number of threads.
 */
public final class Background {

    // The platform's common pool has one thread less, and none at all on two processors, where it
    // would start a new thread for each piece of work.
    private static final ForkJoinPool POOL =
            new ForkJoinPool(Math.max(1, Runtime.getRuntime().availableProcessors()));

    /** Stretches of a range for each thread: several, since some take longer than others. */
    private static final int PARTS = 4;

    private Background() {}

    /** Starts work. */
    public static <T> CompletableFuture<T> start(Supplier<T> work) {
        return CompletableFuture.supplyAsync(work, POOL);
    }

    /**
     * Does the same with each of several things, side by side.
     *
     * @return what came of each, in the order of the things
     */
    public static <A, B> List<B> each(List<A> things, Function<? super A, ? extends B> work) {
        List<CompletableFuture<B>> started =
                things.stream().<CompletableFuture<B>>map(a -> start(() -> work.apply(a))).toList();
        return started.stream().map(Background::result).toList();
    }

    /**
     * Does something with every number of a range, neighbours one after another and stretches of
     * them side by side; what is done with one number must not touch what another uses.
     *
     * @param from the first
     * @param to the end, itself not in the range
     */
    public static void range(int from, int to, IntConsumer work) {
        int part = Math.max(1, (to - from) / (PARTS * POOL.getParallelism()));
        List<Integer> starts =
                IntStream.iterate(from, at -> at < to, at -> at + part).boxed().toList();
        each(
                starts,
                start -> {
                    IntStream.range(start, Math.min(to, start + part)).forEach(work);
                    return start;
                });
    }

    /** Waits for work and returns its result, or throws what it threw. */
    public static <T> T result(CompletableFuture<T> work) {
        try {
            return work.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw e;
        }
    }
}
