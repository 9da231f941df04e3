package offtape.report.measure.loopback;

import java.util.Locale;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;

/** An interface that measured itself once, so that it can be taken out of a session. */
public final class KnownInterface {

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
                    String.format(
                            Locale.ROOT,
                            "The loopback %s was recorded at %d frames a second and this return at"
                                    + " %d, at which the interface is another one. Make a loopback at"
                                    + " the same rate.",
                            session.place(),
                            session.recordingSampleRate(),
                            rateHz));
        }
        if (!programmeSha256.equals(session.programmeSha256())) {
            throw new UnusableInputException(
                    "The loopback "
                            + session.place()
                            + " was made with another programme than this return. Make a loopback"
                            + " with the same programme.");
        }
    }

    /**
     * Refuses a loopback in which a channel was dead that is heard in the session.
     *
     * @throws UnusableInputException in words
     */
    public void requireHeard(String channel) {
        if (channel(channel).isEmpty()) {
            throw new UnusableInputException(
                    "In the loopback "
                            + session.place()
                            + " the "
                            + channel
                            + " channel is dead or missing. Check its cable and make the loopback"
                            + " again with all channels that are used.");
        }
    }
}
