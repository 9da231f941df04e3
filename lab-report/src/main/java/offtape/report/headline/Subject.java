package offtape.report.headline;

import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** What a session is about, since words for a machine with its tape do not fit an interface. */
public enum Subject {
    /** A tape machine. */
    MACHINE,
    /** The interface that measured itself. */
    INTERFACE;

    private static final Sentences SAID = Sentences.near(Subject.class);

    public static Subject of(Results results) {
        return of(results.session());
    }

    public static Subject of(Session session) {
        return CaptureMode.LOOPBACK.key().equals(session.mode()) ? INTERFACE : MACHINE;
    }

    /** The user's name for what was measured, or words that stand for it. */
    public static String nameOf(Session session) {
        return isNamed(session)
                ? session.machineName()
                : SAID.say(of(session).words("unnamed-machine", "the-interface"));
    }

    /** Whether the user gave it a name. */
    public static boolean isNamed(Session session) {
        return session.machineName() != null && !session.machineName().isBlank();
    }

    /** The words that fit. */
    public String words(String ofMachine, String ofInterface) {
        return this == MACHINE ? ofMachine : ofInterface;
    }
}
