package offtape.report.locate;

import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import offtape.core.audio.AudioSource;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;

/**
 * A recording with the programme found in it: what every measure starts from.
 *
 * @param programme what was sent to the tape
 * @param recording what came back, one or two channels
 * @param location where the programme lies in it
 */
public record ProgrammeReturn(Programme programme, AudioSource recording, Location location) {

    private static final Sentences SAID = Sentences.near(ProgrammeReturn.class);

    private static final List<String> NAMES = List.of("left", "right");

    /** The cue sheet of the programme. */
    public CueSheet sheet() {
        return programme.sheet();
    }

    /** The map from programme to recording time. */
    public TimeMap map() {
        return location.map();
    }

    /** Number of channels that are measured, one or two. */
    public int channels() {
        return Math.min(NAMES.size(), recording.channels());
    }

    /** {@code left} or {@code right}. */
    public static String channelName(int channel) {
        return NAMES.get(channel);
    }

    /** The cues of one kind that lie wholly in the recording, in order. */
    public <T extends Cue> List<T> cues(Class<T> kind) {
        return sheet().cues(kind).filter(c -> location.covers(c, sheet().sampleRateHz())).toList();
    }

    /**
     * Why nothing is known of a kind of cue, in a sentence: the programme has none, or where the
     * recording begins or ends short of it.
     *
     * @param which of that kind those that would tell
     * @param otherwise the sentence if the programme has no such cue or the recording holds it
     */
    public <T extends Cue> String whyMissing(Class<T> kind, Predicate<T> which, String otherwise) {
        return sheet().cues(kind)
                .filter(which)
                .filter(c -> !location.covers(c, sheet().sampleRateHz()))
                .max(Comparator.comparingLong(Cue::frames))
                .map(this::whyMissing)
                .orElse(otherwise);
    }

    /** Why a cue is not whole in the recording, in a sentence. */
    public String whyMissing(Cue cue) {
        double to = map().recordingSeconds(sheet().seconds(cue.endFrame()));
        double end = Math.min(location.heardToSeconds(), location.recordingSeconds());
        if (to <= end) {
            return SAID.say("begins-after", cue.id());
        }
        return SAID.say(
                end < location.recordingSeconds() ? "breaks-off" : "ends-before", end, cue.id());
    }

    /** Where a stretch of the programme lies in the recording, less a margin at both ends. */
    public Span span(long startFrame, long frames, double marginSeconds) {
        double from = map().recordingSeconds(sheet().seconds(startFrame)) + marginSeconds;
        double to = map().recordingSeconds(sheet().seconds(startFrame + frames)) - marginSeconds;
        return new Span(from, Math.max(from, to));
    }

    /** Tape speed over nominal around the middle of a stretch of the programme. */
    public double speedRatio(long startFrame, long frames) {
        return map().speedRatio(sheet().seconds(startFrame + frames / 2));
    }

    /** The samples of a span, one array a channel. */
    public double[][] read(Span span) {
        int rate = recording.sampleRateHz();
        return recording.read(
                Math.round(span.from() * rate), (int) Math.round(span.seconds() * rate));
    }

    /**
     * A stretch of the recording.
     *
     * @param from start, seconds
     * @param to end, seconds, not before the start
     */
    public record Span(double from, double to) {

        /** Length in seconds. */
        public double seconds() {
            return to - from;
        }

        /** Its beginning, no longer than so many seconds. */
        public Span beginning(double most) {
            return seconds() > most ? new Span(from, from + most) : this;
        }
    }
}
