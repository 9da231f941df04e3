package offtape.core.fault;

/**
 * An input that cannot be used: unreadable, of the wrong kind, malformed, or without the thing that
 * was looked for. The message is one or two plain sentences for the user: what is wrong, where
 * (file, second, channel) and what to do.
 */
public final class UnusableInputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** Plain sentences for the user, naming the place and the remedy. */
    public UnusableInputException(String message) {
        super(message);
    }

    /** As above, keeping the technical cause for verbose output. */
    public UnusableInputException(String message, Throwable cause) {
        super(message, cause);
    }
}
