package offtape.report.result;

/**
 * A mains line in the noise.
 *
 * @param frequencyHz frequency of the line
 * @param levelDb level re the returned reference tone, dB
 * @param uncertaintyDb expanded uncertainty of the level from the noise beside it, k = 2
 */
public record HumLine(double frequencyHz, double levelDb, double uncertaintyDb) {}
