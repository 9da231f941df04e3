package offtape.core.fault;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Work done beside other work, whose failures come out as they went in.
 *
 * <p>All of it shares one pool in which as many threads run as there are processors; while one
 * waits for work of the pool, another takes its place. The threads never keep the program alive.
 * Results are handed over in the order in which the work was named, so they do not depend on the
 * number of threads.
 */
public final class Background {

    // The platform's common pool has one thread less, and none at all on two processors, where it
    // would start a new thread for each piece of work.
    private static final ForkJoinPool POOL =
            poolOf(Math.max(1, Runtime.getRuntime().availableProcessors()));

    /** Threads beyond this many wait rather than start: far more than ever wait for each other. */
    private static final int MOST_THREADS = 256;

    private static final long IDLE_S = 10;

    /** Stretches of a range for each thread: several, since some take longer than others. */
    private static final int PARTS = 4;

    private Background() {}

    // By itself such a pool replaces a waiting thread only when no other runs, and with two
    // processors one would then stand idle.
    private static ForkJoinPool poolOf(int running) {
        return new ForkJoinPool(
                running,
                ForkJoinPool.defaultForkJoinWorkerThreadFactory,
                null,
                true,
                running,
                MOST_THREADS,
                running,
                pool -> true,
                IDLE_S,
                TimeUnit.SECONDS);
    }

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
