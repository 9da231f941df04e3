package offtape.report.apply.correct;

/**
 * A stretch of frequencies.
 *
 * @param fromHz where it begins
 * @param toHz where it ends
 */
public record Stretch(double fromHz, double toHz) {}
