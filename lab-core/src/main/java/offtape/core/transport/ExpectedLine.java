package offtape.core.transport;

/**
 * Where the line of a part lies.
 *
 * @param part its name, with its harmonic
 * @param lowHz lowest rate that the dimensions and their tolerance allow
 * @param highHz highest
 * @param movement how the rate changes while the tape plays
 */
public record ExpectedLine(String part, double lowHz, double highHz, Movement movement) {

    /** How a rate changes while the tape plays. */
    public enum Movement {
        /** Not at all, or with the speed of the tape. */
        STEADY,
        /** Faster, as the pack of the supply reel shrinks. */
        FASTER,
        /** Slower, as the pack of the take-up reel grows. */
        SLOWER
    }
}
