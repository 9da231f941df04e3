package offtape.core.fault;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/** Work done beside other work, whose failures come out as they went in. */
public final class Background {

    private Background() {}

    /** Starts work on the common pool, whose threads never keep the program alive. */
    public static <T> CompletableFuture<T> start(Supplier<T> work) {
        return CompletableFuture.supplyAsync(work);
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
