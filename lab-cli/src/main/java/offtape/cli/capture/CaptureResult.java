package offtape.cli.capture;

/**
 * A recording that was made.
 *
 * @param frames its length
 * @param complete whether it went on to its end
 * @param peaks highest magnitude of each channel, full-scale units
 * @param clippedFrames how many frames reached full scale on any channel
 * @param marks what went wrong
 */
public record CaptureResult(
        long frames, boolean complete, double[] peaks, long clippedFrames, CaptureMarks marks) {

    /** Whether nothing came back at all. */
    public boolean isSilent() {
        for (double peak : peaks) {
            if (peak > 0) {
                return false;
            }
        }
        return true;
    }
}
