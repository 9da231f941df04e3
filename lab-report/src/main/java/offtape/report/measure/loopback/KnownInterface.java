package offtape.report.measure.loopback;

import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;

/** An interface that measured itself once, so that it can be taken out of a session. */
public final class KnownInterface {

    private static final Sentences SAID = Sentences.near(KnownInterface.class);

    private final LoopbackSession session;

    private KnownInterface(LoopbackSession session) {
        this.session = session;
    }

    /** The interface of a loopback session. */
    public static KnownInterface of(LoopbackSession session) {
        return new KnownInterface(session);
    }

    /** How sessions name the loopback. */
    public LoopbackUse use() {
        return session.use();
    }

    /** What is known of both channels together. */
    public InterfaceFigures figures() {
        return session.figures();
    }

    /** What is known of a channel. */
    public Optional<InterfaceFigures.Channel> channel(String name) {
        return figures().channels().stream().filter(c -> c.channel().equals(name)).findFirst();
    }

    /** The response of a channel; empty if no sweep told it. */
    public Optional<InterfaceResponse> response(String name) {
        return channel(name).map(InterfaceFigures.Channel::response).map(InterfaceResponse::new);
    }

    /**
     * Refuses a loopback that was not made as the session was.
     *
     * @param rateHz frames a second of the session's recording
     * @param programmeSha256 digest of its programme's cue sheet
     * @throws UnusableInputException in words
     */
    public void requireSame(int rateHz, String programmeSha256) {
        if (rateHz != session.recordingSampleRate()) {
            throw new UnusableInputException(
                    SAID.say("other-rate", session.place(), session.recordingSampleRate(), rateHz));
        }
        if (!programmeSha256.equals(session.programmeSha256())) {
            throw new UnusableInputException(SAID.say("other-programme", session.place()));
        }
    }

    /**
     * Refuses a loopback in which a channel was dead that is heard in the session.
     *
     * @throws UnusableInputException in words
     */
    public void requireHeard(String channel) {
        if (channel(channel).isEmpty()) {
            throw new UnusableInputException(SAID.say("dead-channel", session.place(), channel));
        }
    }
}
