package offtape.cli.sound;

/** A sound device cannot be used, or was lost; the message says which, why, and what to do. */
public final class SoundTroubleException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** A trouble in plain sentences. */
    public SoundTroubleException(String message) {
        super(message);
    }

    /** A trouble in plain sentences, with its cause for verbose output. */
    public SoundTroubleException(String message, Throwable cause) {
        super(message, cause);
    }
}
