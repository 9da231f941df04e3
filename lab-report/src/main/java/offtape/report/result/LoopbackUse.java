package offtape.report.result;

/**
 * The loopback session that was taken out of a session.
 *
 * @param madeAt when its recording was made, ISO 8601 in UTC
 * @param recordingSha256 digest of its recording
 */
public record LoopbackUse(String madeAt, String recordingSha256) {}
