package offtape.cli.command;

import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.realign.TrackMatch;
import offtape.core.text.Sentences;
import offtape.report.apply.listen.AlignmentSearch;

/** Finds B in A's time by the sound itself, or says what to do if they have nothing in common. */
final class ListenSearch implements AlignmentSearch {

    private static final Sentences SAID = Sentences.near(ListenSearch.class);

    @Override
    public Alignment find(AudioSource original, AudioSource returned) {
        try {
            return TrackMatch.find(original, returned);
        } catch (UnusableInputException e) {
            throw new UnusableInputException(
                    SAID.say("not-in-time", returned.name(), original.name(), e.getMessage()), e);
        }
    }
}
