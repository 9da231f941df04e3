package offtape.cli.command;

import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.realign.TrackMatch;
import offtape.report.apply.listen.AlignmentSearch;

/** Finds B in A's time by the sound itself, or says what to do if they have nothing in common. */
final class ListenSearch implements AlignmentSearch {

    @Override
    public Alignment find(AudioSource original, AudioSource returned) {
        try {
            return TrackMatch.find(original, returned);
        } catch (UnusableInputException e) {
            throw new UnusableInputException(
                    returned.name()
                            + " cannot be brought in time with "
                            + original.name()
                            + ": "
                            + e.getMessage()
                            + " If these are the right files, --as-they-are takes both from their"
                            + " first frame on.",
                    e);
        }
    }
}
