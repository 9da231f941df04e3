package offtape.core.realign;

/**
 * A stretch of the original.
 *
 * @param from its first frame
 * @param to the one behind its last
 */
record Stretch(long from, long to) {}
