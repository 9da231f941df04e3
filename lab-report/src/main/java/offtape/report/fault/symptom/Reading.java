package offtape.report.fault.symptom;

/**
 * What one session shows of a symptom.
 *
 * @param scaled place on the symptom's scale
 * @param sigma standard deviation of the measurement on that scale
 */
public record Reading(double scaled, double sigma) {}
