package offtape.cli.lineup;

/**
 * How the channels lie in time.
 *
 * @param kind what could be told
 * @param delayMicroseconds of right after left, negative if right is early; 0 if unknown
 * @param plusMinusMicroseconds expanded uncertainty (k = 2) by the noise
 * @param periodMicroseconds of a single tone, by which the delay is ambiguous; 0 otherwise
 * @param inverted whether one channel has its polarity turned over
 * @param monoLossDb what a mono sum loses at 10 kHz against perfect azimuth, 0 or less; null if
 *     there is no sound there
 */
public record PairReading(
        Kind kind,
        double delayMicroseconds,
        double plusMinusMicroseconds,
        double periodMicroseconds,
        boolean inverted,
        Double monoLossDb) {

    /** What could be told. */
    public enum Kind {
        /** A delay. */
        DELAY,
        /** A delay but for whole periods of the only tone there is. */
        ONE_TONE,
        /** Nothing: the channels have little in common. */
        UNRELATED
    }

    static PairReading unrelated() {
        return new PairReading(Kind.UNRELATED, 0, 0, 0, false, null);
    }
}
