package offtape.report.result;

/**
 * A short loss of level.
 *
 * @param channel {@code left} or {@code right}
 * @param atSeconds start, seconds from the start of the recording
 * @param milliseconds length at 3 dB depth
 * @param depthDb greatest loss, dB, positive
 */
public record Dropout(String channel, double atSeconds, double milliseconds, double depthDb) {}
