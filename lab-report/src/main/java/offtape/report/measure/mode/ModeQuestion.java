package offtape.report.measure.mode;

import java.util.List;
import java.util.Optional;
import offtape.core.transport.CaptureMode;

/** Asks a person how a recording was made, where the recording does not show it. */
@FunctionalInterface
public interface ModeQuestion {

    /** Nobody is there to answer. */
    ModeQuestion NOBODY = (possible, why) -> Optional.empty();

    /**
     * Asks.
     *
     * @param possible the modes that the recording allows, at least two
     * @param why what the recording shows, a plain sentence
     * @return the answer, or empty if there is none
     */
    Optional<CaptureMode> ask(List<CaptureMode> possible, String why);
}
