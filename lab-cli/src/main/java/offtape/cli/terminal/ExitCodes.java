package offtape.cli.terminal;

/** The exit codes of the command. */
public final class ExitCodes {

    /** Done. */
    public static final int DONE = 0;

    /** Measured, and a limit is failed; only where that was asked for. */
    public static final int LIMIT_FAILED = 1;

    /** Wrong usage, or an output that may not be written. */
    public static final int USAGE = 2;

    /** An input cannot be used. */
    public static final int UNUSABLE_INPUT = 3;

    /** Sound device trouble. */
    public static final int SOUND_DEVICE = 4;

    /** Ended from outside, by Ctrl-C for instance. */
    public static final int INTERRUPTED = 130;

    /** Internal fault. */
    public static final int INTERNAL = 70;

    private ExitCodes() {}
}
