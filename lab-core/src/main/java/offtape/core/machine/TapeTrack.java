package offtape.core.machine;

/** The part of a written track that is still to be read, at twice the programme's rate. */
final class TapeTrack {

    private double[] samples = new double[0];
    private long origin;
    private int filled;

    /** An empty track whose first sample will have this number. */
    TapeTrack(long firstSample) {
        origin = firstSample;
    }

    /** Number of the sample behind the last one written. */
    long end() {
        return origin + filled;
    }

    /** Forgets what lies before a sample and appends more. */
    void append(double[] more, long keepFrom) {
        int dropped = (int) Math.max(0, Math.min(filled, keepFrom - origin));
        int kept = filled - dropped;
        double[] target = samples;
        if (kept + more.length > samples.length) {
            target = new double[2 * (kept + more.length)];
        }
        System.arraycopy(samples, dropped, target, 0, kept);
        System.arraycopy(more, 0, target, kept, more.length);
        samples = target;
        origin += dropped;
        filled = kept + more.length;
    }

    /** The track between its samples; {@link Interpolator#HALF} samples to either side needed. */
    double at(double place) {
        return Interpolator.at(samples, place - origin);
    }
}
