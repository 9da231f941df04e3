package offtape.report.locate;

/**
 * One of several times that a programme was recorded into one file.
 *
 * @param fromSeconds where its first frame lies in the recording
 * @param toSeconds where it ends or breaks off
 * @param whole whether it holds the programme from the first sound to the last
 */
public record Take(double fromSeconds, double toSeconds, boolean whole) {

    /** How long it is, seconds. */
    public double seconds() {
        return toSeconds - Math.max(0, fromSeconds);
    }
}
