package offtape.core.realign;

/**
 * What is known beforehand of where a return lies; it decides only where the sound itself does not.
 *
 * @param delaySeconds of the path, from original to return
 */
public record Expectation(double delaySeconds) {}
