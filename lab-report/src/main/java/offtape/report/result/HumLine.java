package offtape.report.result;

/**
 * A mains line in the noise.
 *
 * @param frequencyHz frequency of the line
 * @param levelDb level re the returned reference tone, dB
 */
public record HumLine(double frequencyHz, double levelDb) {}
