package offtape.cli.lineup;

/** What is going on. */
public enum Stage {
    /** Nothing is sent and the noise is taken. */
    NOISE,
    /** A mark is on its way. */
    MARK,
    /** The sound rises or settles. */
    SETTLING,
    /** Readings are those of what is sent. */
    READING
}
