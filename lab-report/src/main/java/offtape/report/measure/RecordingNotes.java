package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChosenChannels;
import offtape.core.text.Sentences;
import offtape.report.result.HealthNote;

/** What the reader of the figures should know of the recording's channels and sample rate. */
final class RecordingNotes {

    private static final Sentences SAID = Sentences.near(RecordingNotes.class);

    /** Under this rate a recording does not hold all that can be heard. */
    private static final int LOWEST_RATE_HZ = 44_100;

    private RecordingNotes() {}

    /** All notes on a recording, of which one or two channels are measured. */
    static List<HealthNote> of(AudioSource recording) {
        List<HealthNote> notes = new ArrayList<>();
        if (recording.sampleRateHz() < LOWEST_RATE_HZ) {
            notes.add(narrow(recording.sampleRateHz()));
        }
        if (recording instanceof ChosenChannels chosen) {
            notes.add(choice(chosen));
        } else if (recording.channels() == 1) {
            notes.add(note("mono", SAID.say("mono")));
        }
        if (recording.channels() == 2 && IdenticalChannels.in(recording)) {
            notes.add(note("identical-channels", SAID.say("identical-channels")));
        }
        return notes;
    }

    private static HealthNote narrow(int rateHz) {
        return new HealthNote(
                "warning", "narrow-band", SAID.say("narrow-band", rateHz, rateHz / 2000.0));
    }

    private static HealthNote choice(ChosenChannels chosen) {
        int has = chosen.whole().channels();
        if (!chosen.isAskedFor()) {
            return note("more-channels", SAID.say("more-channels", has));
        }
        int first = chosen.numbers().get(0);
        String which =
                chosen.channels() == 1
                        ? SAID.say("chosen-channel", first, has)
                        : SAID.say("chosen-channels", first, chosen.numbers().get(1), has);
        return note("chosen-channels", which);
    }

    private static HealthNote note(String code, String message) {
        return new HealthNote("note", code, message);
    }
}
