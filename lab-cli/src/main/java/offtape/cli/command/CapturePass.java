package offtape.cli.command;

import java.util.Locale;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;

/** What a capture does: both at once, or one half of it on a machine with two heads. */
enum CapturePass {
    /** Plays and records at the same time. */
    BOTH(0.5, 2),

    /** Plays only, while the machine records. */
    RECORD(3, 1),

    /** Records only, while the machine replays. */
    REPLAY(0, 30);

    private static final Sentences SAID = Sentences.near(CapturePass.class);

    private final double leadSeconds;
    private final double tailSeconds;

    CapturePass(double leadSeconds, double tailSeconds) {
        this.leadSeconds = leadSeconds;
        this.tailSeconds = tailSeconds;
    }

    /** As the command line names it. */
    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether the programme is played. */
    boolean plays() {
        return this != REPLAY;
    }

    /** Whether something is recorded. */
    boolean records() {
        return this != RECORD;
    }

    /** Silence that is played before the programme, seconds. */
    double leadSeconds() {
        return leadSeconds;
    }

    /** What is left after the programme unless the user says otherwise, seconds. */
    double usualTailSeconds() {
        return tailSeconds;
    }

    /**
     * The pass that goes with a capture mode.
     *
     * @param said by the user, or null
     * @param mode said by the user, or null
     * @throws IllegalArgumentException if they don't go together, in a plain sentence
     */
    static CapturePass of(CapturePass said, CaptureMode mode) {
        boolean halves = mode == CaptureMode.TWO_PASS || mode == CaptureMode.REFERENCE_TAPE;
        if (said != null && said != BOTH && mode != null && !halves) {
            throw new IllegalArgumentException(SAID.say("one-pass", mode.key()));
        }
        if (mode == CaptureMode.TWO_PASS && (said == null || said == BOTH)) {
            throw new IllegalArgumentException(SAID.say("two-passes"));
        }
        if (mode == CaptureMode.REFERENCE_TAPE) {
            if (said == RECORD) {
                throw new IllegalArgumentException(SAID.say("replay-only"));
            }
            return REPLAY;
        }
        return said == null ? BOTH : said;
    }
}
