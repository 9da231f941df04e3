package offtape.cli.command;

/** What becomes of a mono file that is sent to both channels. */
enum MonoFrom {
    /** The left channel alone. */
    LEFT,
    /** The right channel alone. */
    RIGHT,
    /** Both channels. */
    BOTH
}
