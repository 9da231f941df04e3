package offtape.report.measure.mode;

import offtape.core.transport.CaptureMode;
import offtape.report.measure.loopback.KnownInterface;

/**
 * What is said of how a recording came about.
 *
 * @param mode which motion wrote and which one read, or null if nobody said
 * @param question whom to ask if the recording does not show it either
 * @param headSpacingMm distance from record to replay head along the tape, millimetres, or null if
 *     not known
 * @param loopback the interface as it measured itself, to be taken out, or null if it did not
 * @param replays how many returns of the same recording there are, 1 or more
 */
public record Capture(
        CaptureMode mode,
        ModeQuestion question,
        Double headSpacingMm,
        KnownInterface loopback,
        int replays) {

    /** A recording that was replayed once, through an interface of which nothing is known. */
    public Capture(CaptureMode mode, ModeQuestion question, Double headSpacingMm) {
        this(mode, question, headSpacingMm, null, 1);
    }

    /** A recording of a mode that was said. */
    public static Capture of(CaptureMode mode) {
        return new Capture(mode, ModeQuestion.NOBODY, null);
    }

    /** A recording of which nothing was said, and nobody can be asked. */
    public static Capture unsaid() {
        return of(null);
    }
}
