package offtape.cli.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** Troubles as the sound threads note them: a fixed amount of room, no lock, no allocation. */
final class TroubleLog {

    private static final int MOST = 1000;

    private final int sampleRateHz;
    private final AtomicLong recorded = new AtomicLong();
    private final long[] places = new long[MOST];
    private final CaptureMarks.Kind[] kinds = new CaptureMarks.Kind[MOST];
    private final AtomicInteger count = new AtomicInteger();

    TroubleLog(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /** Says how far the recording has come. */
    void recorded(long frames) {
        recorded.set(frames);
    }

    /** Notes a trouble where the recording is now. */
    void note(CaptureMarks.Kind kind) {
        int i = count.getAndIncrement();
        if (i < MOST) {
            places[i] = recorded.get();
            kinds[i] = kind;
        }
    }

    /** What was noted, once the sound threads are done. */
    CaptureMarks marks() {
        List<CaptureMarks.Trouble> troubles = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST, count.get()); i++) {
            troubles.add(new CaptureMarks.Trouble(kinds[i], (double) places[i] / sampleRateHz));
        }
        return new CaptureMarks(troubles);
    }
}
