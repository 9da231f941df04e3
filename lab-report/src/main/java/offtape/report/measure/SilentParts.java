package offtape.report.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;

/**
 * Parts of the programme in whose place the recording holds no sound: it was off for a while. They
 * are looked into at moments at which any machine returns about the level that it returns the
 * reference tone at.
 */
final class SilentParts {

    private static final Sentences SAID = Sentences.near(SilentParts.class);

    /** Around 1 kHz a machine that returns the reference tone returns everything. */
    private static final double LOWEST_HZ = 300;

    private static final double HIGHEST_HZ = 3500;

    /** Where sweeps are looked into. */
    private static final List<Double> SWEPT_HZ = List.of(500.0, 1000.0, 2000.0);

    /** Fades lie nearer to the ends of a part, a share of its length. */
    private static final double ENDS = 0.05;

    /** Length of a moment. */
    private static final double MOMENT_S = 0.05;

    /** What returns so much weaker than it should, 10 dB as a ratio of amplitudes, is not there. */
    private static final double MISSING = 0.316;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;

    SilentParts(ProgrammeReturn ret, ReferenceLevels reference) {
        this.ret = ret;
        this.reference = reference;
    }

    /**
     * A moment of a part.
     *
     * @param atFrame its middle, in the programme
     * @param levelDb what sounds there, dB re reference
     */
    private record Moment(double atFrame, double levelDb) {}

    /** A warning that names them, if there are any; the reference tone is not among them. */
    Optional<HealthNote> note() {
        List<Cue> silent =
                ret.cues(Cue.class).stream()
                        .filter(cue -> !isReference(cue) && isReturned(cue.channels()))
                        .filter(this::isSilent)
                        .sorted(Comparator.comparingLong(Cue::startFrame))
                        .toList();
        return silent.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new HealthNote(
                                "warning",
                                "silent-parts",
                                SAID.say(
                                        "silent-parts",
                                        silent.stream()
                                                .map(this::words)
                                                .collect(Collectors.joining(", ")))));
    }

    private String words(Cue cue) {
        ProgrammeReturn.Span span = ret.span(cue.startFrame(), cue.frames(), 0);
        return SAID.say("silent-part", cue.id(), span.from(), span.to());
    }

    private boolean isReference(Cue cue) {
        return ReferenceLevels.wanted(ret)
                .filter(tone -> tone.startFrame() == cue.startFrame())
                .isPresent();
    }

    /** Whether a channel that the part sounds on returns anything at all. */
    private boolean isReturned(ChannelSet channels) {
        return switch (channels) {
            case BOTH -> true;
            case LEFT -> reference.heard(0);
            case RIGHT -> ret.channels() > 1 && reference.heard(1);
        };
    }

    private boolean isSilent(Cue cue) {
        List<Moment> moments = moments(cue);
        return !moments.isEmpty() && moments.stream().noneMatch(this::sounds);
    }

    private static List<Moment> moments(Cue cue) {
        if (cue instanceof Cue.Tone tone && isUsual(tone.frequencyHz())) {
            return DoubleStream.of(0.25, 0.5, 0.75)
                    .mapToObj(share -> at(tone, share, tone.levelDb()))
                    .toList();
        }
        if (cue instanceof Cue.Ladder ladder && isUsual(ladder.frequencyHz())) {
            // the higher steps are compressed
            return ladder.steps().stream()
                    .filter(step -> step.levelDb() <= 0)
                    .map(s -> new Moment(s.startFrame() + s.frames() / 2.0, s.levelDb()))
                    .toList();
        }
        return cue instanceof Cue.Sweep sweep ? moments(sweep) : List.of();
    }

    private static List<Moment> moments(Cue.Sweep sweep) {
        double octaves = Math.log(sweep.endHz() / sweep.startHz());
        return SWEPT_HZ.stream()
                .map(hz -> Math.log(hz / sweep.startHz()) / octaves)
                .filter(share -> share > ENDS && share < 1 - ENDS)
                .map(share -> at(sweep, share, sweep.levelDb()))
                .toList();
    }

    private static Moment at(Cue cue, double share, double levelDb) {
        return new Moment(cue.startFrame() + share * cue.frames(), levelDb);
    }

    private static boolean isUsual(double hz) {
        return hz >= LOWEST_HZ && hz <= HIGHEST_HZ;
    }

    private boolean sounds(Moment moment) {
        int rate = ret.recording().sampleRateHz();
        double middle = ret.map().recordingSeconds(moment.atFrame() / ret.sheet().sampleRateHz());
        double[][] heard =
                ret.recording()
                        .read(
                                Math.round((middle - MOMENT_S / 2) * rate),
                                (int) Math.round(MOMENT_S * rate));
        double share = MISSING * Math.pow(10, moment.levelDb() / 20);
        return IntStream.range(0, ret.channels())
                .filter(reference::heard)
                .anyMatch(c -> meanSquare(heard[c]) > share * share * reference.power(c));
    }

    private static double meanSquare(double[] x) {
        return DoubleStream.of(x).map(v -> v * v).average().orElse(0);
    }
}
