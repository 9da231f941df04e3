package offtape.report.result;

/**
 * The tone that is the zero of levels.
 *
 * @param tone its number
 * @param frequencyHz its nominal frequency, or that heard if no nominal one is known
 * @param because why it was taken, a plain sentence
 */
public record TapeReference(int tone, double frequencyHz, String because) {}
