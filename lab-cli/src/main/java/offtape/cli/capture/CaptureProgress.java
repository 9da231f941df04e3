package offtape.cli.capture;

/** Is told how a recording goes, some times a second, by the thread that writes it. */
@FunctionalInterface
public interface CaptureProgress {

    /**
     * Tells.
     *
     * @param seconds recorded so far
     * @param ofSeconds how long it will be
     * @param peaks highest magnitude of each channel since the last time, full-scale units
     * @param clipped whether full scale was reached at any time
     */
    void tell(double seconds, double ofSeconds, double[] peaks, boolean clipped);
}
