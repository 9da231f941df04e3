package offtape.core.audio.flac;

import offtape.core.text.Sentences;

/** Something in a stream that cannot be decoded. The message is a clause for the user. */
public final class FlacFault extends Exception {

    private static final Sentences SAID = Sentences.near(FlacFault.class);

    private static final long serialVersionUID = 1L;

    private final boolean cutShort;

    private FlacFault(String clause, boolean cutShort) {
        super(clause);
        this.cutShort = cutShort;
    }

    /** The stream contradicts the format or one of its checksums. */
    static FlacFault damaged(String clause) {
        return new FlacFault(clause, false);
    }

    /** The bytes ended where more were needed. */
    static FlacFault cut() {
        return new FlacFault(SAID.say("too-early"), true);
    }

    /** Whether the bytes simply ended; what came before is sound. */
    public boolean isCutShort() {
        return cutShort;
    }
}
