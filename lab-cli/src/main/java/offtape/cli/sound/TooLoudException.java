package offtape.cli.sound;

/** Something is not played because it is above the highest level that was allowed. */
public final class TooLoudException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** In a plain sentence. */
    public TooLoudException(String message) {
        super(message);
    }
}
