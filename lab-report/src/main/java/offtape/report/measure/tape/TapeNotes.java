package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import offtape.core.audio.AudioSource;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;
import offtape.core.text.Sentences;
import offtape.report.locate.ProgrammeReturn;

/** What the reader of a tape's figures should know. */
final class TapeNotes {

    private static final Sentences SAID = Sentences.near(TapeNotes.class);

    private static final double FULL_SCALE_DB = -0.1;
    private static final double MENTIONED_S = 0.2;

    /** Below this a full-track tape reads high on narrower tracks; common practice, no source. */
    private static final double FRINGING_HZ = 500;

    private static final double SAME_DB = 1e-9;

    private final AudioSource recording;
    private final TapeQuestion question;
    private final Naming naming;
    private final PairDelay pair;

    TapeNotes(AudioSource recording, TapeQuestion question, Naming naming, PairDelay pair) {
        this.recording = recording;
        this.question = question;
        this.naming = naming;
        this.pair = pair;
    }

    /** Notes on the recording, its tones and its channels. */
    List<String> all() {
        List<String> notes = new ArrayList<>();
        if (naming.tones().size() == 1) {
            notes.add(SAID.say("one-tone"));
        }
        addTones(notes);
        addChannels(notes);
        boolean isFromTape =
                question.speedToneHz() != null
                        || naming.tones().stream().anyMatch(t -> t.isFor(ListedTone.Purpose.SPEED));
        boolean isStated = question.list() != null && question.list().accuracyPercent() != null;
        if (isFromTape && !isStated) {
            notes.add(SAID.say("accuracy-not-stated"));
        }
        return notes;
    }

    private void addTones(List<String> notes) {
        String spoilt = which(t -> t.heard().leftOutSeconds() > MENTIONED_S);
        if (!spoilt.isEmpty()) {
            notes.add(SAID.say("level-jumps", spoilt));
        }
        String loud = which(t -> t.heard().loudestDb() > FULL_SCALE_DB);
        if (!loud.isEmpty()) {
            notes.add(SAID.say("full-scale", loud));
        }
    }

    private void addChannels(List<String> notes) {
        if (recording.channels() < 2) {
            notes.add(SAID.say("one-channel-as-left"));
            return;
        }
        if (naming.tones().stream().allMatch(TapeNotes::isSame)) {
            notes.add(SAID.say("channels-same"));
        } else if (pair.isInverted()) {
            notes.add(SAID.say("channels-inverted"));
        }
        for (int c = 0; c < 2; c++) {
            int channel = c;
            if (naming.tones().stream().noneMatch(t -> t.heard().levels().get(channel).isKnown())) {
                notes.add(SAID.say("none-on-channel", ProgrammeReturn.channelName(c)));
            }
        }
    }

    private static boolean isSame(NamedTone tone) {
        return tone.heard().difference().isKnown()
                && Math.abs(tone.heard().difference().value()) < SAME_DB
                && Math.abs(tone.heard().phase().radians()) < SAME_DB;
    }

    private String which(Predicate<NamedTone> chosen) {
        return naming.tones().stream()
                .filter(chosen)
                .map(t -> SAID.say("tone", t.number(), t.aboutHz()))
                .collect(Collectors.joining(", "));
    }

    /** Notes on the response. */
    static List<String> onResponse(ResponseTones response, TapeQuestion question) {
        List<String> notes = new ArrayList<>();
        notes.add(response.note());
        if (response.tones().isEmpty()) {
            return notes;
        }
        equalisation(question).forEach(notes::add);
        if (response.tones().stream().anyMatch(t -> t.aboutHz() < FRINGING_HZ)) {
            notes.add(SAID.say("fringing"));
        }
        return notes;
    }

    private static List<String> equalisation(TapeQuestion question) {
        TimeConstants tape = question.tapeConstants();
        TimeConstants machine = question.machine();
        if (tape == null) {
            return List.of(SAID.say("constants-not-stated"));
        }
        if (machine == null || machine.equals(tape)) {
            return List.of(SAID.say("constants-same", tape.words()));
        }
        return List.of(SAID.say("constants-differ", tape.words(), machine.words()));
    }
}
