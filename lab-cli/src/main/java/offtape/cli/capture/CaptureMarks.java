package offtape.cli.capture;

import java.util.List;

/**
 * What went wrong while sound was recorded.
 *
 * @param troubles in order of time
 */
public record CaptureMarks(List<Trouble> troubles) {

    /** Copies the list. */
    public CaptureMarks {
        troubles = List.copyOf(troubles);
    }

    /**
     * One trouble.
     *
     * @param kind what it was
     * @param seconds where in the recording, within a buffer's length
     */
    public record Trouble(Kind kind, double seconds) {}

    /** Kinds of trouble. */
    public enum Kind {
        /** The system ran out of sound to play: a gap was heard. */
        GAP_PLAYED,
        /** Recorded sound was lost. */
        SOUND_LOST,
    }
}
