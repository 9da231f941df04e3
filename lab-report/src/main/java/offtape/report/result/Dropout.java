package offtape.report.result;

/**
 * A short loss of level.
 *
 * @param channel {@code left} or {@code right}
 * @param atSeconds start, seconds from the start of the recording
 * @param milliseconds length between the points 3 dB down; of one not as deep as 4.5 dB, 1.5 dB
 *     above its bottom
 * @param depthDb greatest loss re the level just before and after, dB, positive
 * @param common whether the other channel drops out during some of the same time
 */
public record Dropout(
        String channel, double atSeconds, double milliseconds, double depthDb, boolean common) {}
