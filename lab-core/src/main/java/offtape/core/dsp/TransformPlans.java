package offtape.core.dsp;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jtransforms.fft.DoubleFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/**
 * Keeps the plans of the latest transforms by size, because a plan costs about as much as a
 * transform. A plan takes about 12 bytes a point at powers of two and up to 110 at large primes;
 * the plans kept hold at most {@value #POINTS_KEPT} points together. Plans are read-only once made,
 * so threads may share them.
 */
final class TransformPlans {

    private static final long POINTS_KEPT = 1L << 22;

    private static final TransformPlans SHARED = new TransformPlans(POINTS_KEPT);

    private final Map<Integer, DoubleFFT_1D> bySize = new ConcurrentHashMap<>();
    private final Deque<Integer> oldestFirst = new ArrayDeque<>();
    private final long pointsKept;
    private long points;

    /**
     * No plans yet.
     *
     * @param pointsKept how many points all kept plans may have together; the latest is kept in any
     *     case
     */
    TransformPlans(long pointsKept) {
        this.pointsKept = pointsKept;
        // Work is spread over cues and channels instead: one transform gains little from threads.
        ConcurrencyUtils.setNumberOfThreads(1);
    }

    /** The plan of a transform of {@code n} points, n at least 1. */
    static DoubleFFT_1D of(int n) {
        return SHARED.plan(n);
    }

    /** The plan of a transform of {@code n} points, made if it is not kept. */
    DoubleFFT_1D plan(int n) {
        // Transforms are made by the ten thousand: only one that is new waits for others.
        DoubleFFT_1D known = bySize.get(n);
        return known != null ? known : made(n);
    }

    private synchronized DoubleFFT_1D made(int n) {
        DoubleFFT_1D known = bySize.get(n);
        if (known != null) {
            return known;
        }
        DoubleFFT_1D made = new DoubleFFT_1D(n);
        bySize.put(n, made);
        oldestFirst.add(n);
        points += n;
        while (points > pointsKept && oldestFirst.size() > 1) {
            int oldest = oldestFirst.remove();
            bySize.remove(oldest);
            points -= oldest;
        }
        return made;
    }
}
