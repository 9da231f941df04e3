package offtape.report.result;

/**
 * A steady line of the speed deviation.
 *
 * @param frequencyHz rate of the line
 * @param peakPercent peak deviation it causes, percent
 * @param part the rotating part it belongs to, or null if not known
 */
public record SpeedComponent(double frequencyHz, double peakPercent, String part) {}
