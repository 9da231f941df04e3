package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChosenChannels;
import offtape.report.result.HealthNote;

/** What the reader of the figures should know of the recording's channels and sample rate. */
final class RecordingNotes {

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
            notes.add(
                    note("mono", "The recording has one channel only, which is reported as left."));
        }
        if (recording.channels() == 2 && IdenticalChannels.in(recording)) {
            notes.add(
                    note(
                            "identical-channels",
                            "Both channels hold the same samples, as when a mono recording is"
                                    + " exported as stereo: balance, crosstalk and delay between the"
                                    + " channels are those of the export and not of the machine."
                                    + " If the machine is a stereo one, export both of its"
                                    + " channels."));
        }
        return notes;
    }

    private static HealthNote narrow(int rateHz) {
        return new HealthNote(
                "warning",
                "narrow-band",
                String.format(
                        Locale.ROOT,
                        "The recording has %d frames a second and so ends at %.1f kHz: noise levels"
                                + " and what lies above are unknown. Record at 44100 or more.",
                        rateHz,
                        rateHz / 2000.0));
    }

    private static HealthNote choice(ChosenChannels chosen) {
        int has = chosen.whole().channels();
        if (!chosen.isAskedFor()) {
            return note(
                    "more-channels",
                    "The recording has "
                            + has
                            + " channels; the first two were measured. Choose others with"
                            + " --channels, such as --channels 3,4.");
        }
        int first = chosen.numbers().get(0);
        String which =
                chosen.channels() == 1
                        ? "Channel " + first + " of " + has + " was measured, reported as left."
                        : "Channels "
                                + first
                                + " and "
                                + chosen.numbers().get(1)
                                + " of "
                                + has
                                + " were measured, reported as left and right.";
        return note("chosen-channels", which);
    }

    private static HealthNote note(String code, String message) {
        return new HealthNote("note", code, message);
    }
}
