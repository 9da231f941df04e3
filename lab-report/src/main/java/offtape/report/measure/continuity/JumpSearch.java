package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * Places at which sound is missing or was added, as by a computer that is late. The edges of tones
 * tell that and by how much, against what the tones' frequencies say of time; within a tone, its
 * phase or a hole in it tells the place.
 */
public final class JumpSearch {

    /**
     * How sharply a phase or a hole tells the place: the lines on both sides of a moment see the
     * whole of a jump up to 5 ms away, and the filter before them blurs it.
     */
    private static final double SHARP_S = 0.006;

    /** Within a sounding part, so far from its ends, a hole is one. */
    private static final double MARGIN_S = 0.06;

    private JumpSearch() {}

    /** All of them, in order. */
    public static List<Jump> find(ProgrammeReturn ret) {
        List<HeardTone> tones = HeardTone.in(ret);
        List<Jump> jumps = StepSearch.of(EdgeTimes.of(ret), new ExpectedTime(tones));
        if (jumps.isEmpty()) {
            return jumps;
        }
        List<Double> moments = new ArrayList<>(SweepJumps.in(ret));
        tones.forEach(t -> moments.addAll(t.jumps(ret)));
        return jumps.stream().map(j -> sharpened(ret, j, moments)).toList();
    }

    private static Jump sharpened(ProgrammeReturn ret, Jump jump, List<Double> moments) {
        List<Double> places =
                moments.stream()
                        .filter(m -> m > jump.fromSeconds() && m < jump.toSeconds())
                        .toList();
        if (places.isEmpty()) {
            places = holes(ret, jump);
        }
        if (places.size() != 1) {
            return jump;
        }
        double place = places.get(0);
        return new Jump(place - SHARP_S, place + SHARP_S, jump.lateSeconds());
    }

    private static List<Double> holes(ProgrammeReturn ret, Jump jump) {
        List<Double> holes = new ArrayList<>();
        for (Cue cue : ret.cues(Cue.class)) {
            ProgrammeReturn.Span span = ret.span(cue.startFrame(), cue.frames(), MARGIN_S);
            double from = Math.max(span.from(), jump.fromSeconds());
            double to = Math.min(span.to(), jump.toSeconds());
            if (!(cue instanceof Cue.Silence) && to - from > MARGIN_S) {
                Hole.in(ret.recording(), from, to, jump.lateSeconds()).ifPresent(holes::add);
            }
        }
        return holes;
    }
}
