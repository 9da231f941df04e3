package offtape.cli.lineup;

/**
 * The return's delay after what was sent, by marks. The computer's buffers are in it, which stay as
 * they are while a stream is open, so that differences are those of the way outside.
 *
 * @param state what is known
 * @param milliseconds by the last mark; 0 if none was found
 * @param firstMilliseconds by the first mark that it can be held against
 * @param marks how many there were from that one on
 * @param gaps whether the computer was late before, so that gaps of unknown length are in it
 */
public record Delay(
        State state, double milliseconds, double firstMilliseconds, int marks, boolean gaps) {

    /** What is known. */
    public enum State {
        /** No mark has been sent. */
        NONE,
        /** The last mark came back. */
        FOUND,
        /** The last mark did not come back. */
        MISSING
    }

    static Delay none() {
        return new Delay(State.NONE, 0, 0, 0, false);
    }

    /**
     * One more mark.
     *
     * @param late whether the computer was late since the mark before, or since the beginning; then
     *     this one is the first anew
     */
    Delay found(double ms, boolean late) {
        boolean first = marks == 0 || late;
        return new Delay(
                State.FOUND,
                ms,
                first ? ms : firstMilliseconds,
                first ? 1 : marks + 1,
                gaps || late);
    }

    Delay missing() {
        return new Delay(State.MISSING, milliseconds, firstMilliseconds, marks, gaps);
    }

    /** How much later than at the first mark. */
    public double moreMilliseconds() {
        return milliseconds - firstMilliseconds;
    }
}
