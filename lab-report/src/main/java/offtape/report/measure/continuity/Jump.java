package offtape.report.measure.continuity;

/**
 * A place at which the time of a return jumps: sound was added or is missing there.
 *
 * @param fromSeconds it lies after this moment of the recording
 * @param toSeconds and before this one
 * @param lateSeconds by how much what follows comes later than before; negative if sound is missing
 */
public record Jump(double fromSeconds, double toSeconds, double lateSeconds) {

    /** Its place as nearly as it is known, seconds of the recording. */
    public double middleSeconds() {
        return (fromSeconds + toSeconds) / 2;
    }

    /** Whether the place is known to a tenth of a second. */
    public boolean isSharp() {
        return toSeconds - fromSeconds < 0.1;
    }
}
