package offtape.report.locate;

/**
 * A marker as it was heard, against what the tones alone say of time.
 *
 * @param programmeSeconds middle of the marker in the programme
 * @param lateSeconds how late it is against the tones' course of speed, laid through the first
 *     marker that was heard
 * @param doubtSeconds what wow and the scatter of the tones' readings may make of that, k = 2
 */
public record MarkerSight(double programmeSeconds, double lateSeconds, double doubtSeconds) {}
