package offtape.core.fault;

/**
 * An output that may not or cannot be written: something of the user's is in the way, or the place
 * is not writable. The message is one or two plain sentences for the user, with the remedy.
 */
public final class RefusedOutputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** Plain sentences for the user, naming the place and the remedy. */
    public RefusedOutputException(String message) {
        super(message);
    }

    /** As above, keeping the technical cause for verbose output. */
    public RefusedOutputException(String message, Throwable cause) {
        super(message, cause);
    }
}
