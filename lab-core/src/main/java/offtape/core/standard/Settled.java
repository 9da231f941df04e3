package offtape.core.standard;

/**
 * The part of a filtered deviation that figures are taken from: without its first {@value
 * Iec60386#SETTLING_SECONDS} s and its last {@value Iec60386#TRAILING_SECONDS} s.
 */
public final class Settled {

    private final SampleQueue waiting = new SampleQueue();
    private final int trailing;
    private int early;

    Settled(double sampleRateHz) {
        early = (int) Math.round(Iec60386.SETTLING_SECONDS * sampleRateHz);
        trailing = (int) Math.round(Iec60386.TRAILING_SECONDS * sampleRateHz);
    }

    /** Takes the next samples; gives those that are known to belong to that part. */
    public double[] next(double[] filtered) {
        waiting.add(filtered);
        int skipped = Math.min(early, waiting.size());
        waiting.take(skipped);
        early -= skipped;
        return waiting.take(Math.max(0, waiting.size() - trailing));
    }
}
