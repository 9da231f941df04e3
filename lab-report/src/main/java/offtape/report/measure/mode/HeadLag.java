package offtape.report.measure.mode;

/**
 * The time from record to replay head, off tape: the lag between writing and reading.
 *
 * @param seconds mean over the programme
 * @param uncertaintySeconds expanded, k = 2
 * @param basis where it is from, a plain sentence
 */
record HeadLag(double seconds, double uncertaintySeconds, String basis) {}
