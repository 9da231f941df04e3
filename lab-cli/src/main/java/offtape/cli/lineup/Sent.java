package offtape.cli.lineup;

/**
 * What is to be sent.
 *
 * @param number grows with each change
 * @param kind of sound
 * @param frequencyHz of a tone, 0 otherwise
 * @param table samples of the other kinds, peak 1, not to be modified; null for a tone
 * @param left peak on the left channel, full-scale units, 0 or more
 * @param right peak on the right channel
 */
record Sent(long number, Kind kind, double frequencyHz, double[] table, double left, double right) {

    /** Kinds of sound. */
    enum Kind {
        /** Silence. */
        NOTHING,
        /** A sine. */
        TONE,
        /** A table over and over. */
        LOOP,
        /** A table once, without fading it in or out. */
        ONCE
    }

    static Sent nothing(long number) {
        return new Sent(number, Kind.NOTHING, 0, null, 0, 0);
    }

    static Sent tone(long number, double frequencyHz, double left, double right) {
        return new Sent(number, Kind.TONE, frequencyHz, null, left, right);
    }

    static Sent loop(long number, double[] table, double left, double right) {
        return new Sent(number, Kind.LOOP, 0, table, left, right);
    }

    static Sent once(long number, double[] table, double peak) {
        return new Sent(number, Kind.ONCE, 0, table, peak, peak);
    }

    /** Whether only levels differ, so that the sound need not stop in between. */
    boolean sounds(Sent other) {
        return kind == other.kind
                && kind != Kind.ONCE
                && frequencyHz == other.frequencyHz
                && table == other.table;
    }
}
