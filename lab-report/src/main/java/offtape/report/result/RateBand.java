package offtape.report.result;

/**
 * A band of rates of change.
 *
 * @param fromHz lower end
 * @param toHz upper end
 */
public record RateBand(double fromHz, double toHz) {}
