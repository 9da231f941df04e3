package offtape.report.locate;

/**
 * How late a moment of the programme comes back: recording time less programme time.
 *
 * @param part the part of the programme that shows it
 * @param programmeSeconds the moment
 * @param lateSeconds how late it is, on average over the channels that are heard
 */
public record LateMoment(String part, double programmeSeconds, double lateSeconds) {}
