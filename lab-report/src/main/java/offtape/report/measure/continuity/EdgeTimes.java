package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import offtape.core.programme.Cue;
import offtape.report.locate.LateMoment;
import offtape.report.locate.ProgrammeReturn;

/**
 * How late the beginnings and ends of tones come back, from the rise and fall of level around them.
 * Unlike a tone's phase, that leaves no whole periods open; it is known to some tenths of a
 * millisecond.
 */
final class EdgeTimes {

    private static final double HALF_WINDOW_S = 0.12;
    private static final double FARTHEST_S = 0.2;
    private static final double STEP_S = 0.0005;

    /** Edges nearer to each other are one. */
    private static final double APART_S = 0.03;

    private static final double LOWEST_HZ = 300;

    /** What is less alike is something else, or lies under noise. */
    private static final double ALIKE = 0.97;

    private final ProgrammeReturn ret;

    private EdgeTimes(ProgrammeReturn ret) {
        this.ret = ret;
    }

    /** One moment for each edge that is heard clearly, in order. */
    static List<LateMoment> of(ProgrammeReturn ret) {
        EdgeTimes times = new EdgeTimes(ret);
        List<LateMoment> moments = new ArrayList<>();
        double before = Double.NEGATIVE_INFINITY;
        for (var edge : times.edges().entrySet()) {
            if (edge.getKey() - before >= APART_S) {
                times.moment(edge.getValue(), edge.getKey()).ifPresent(moments::add);
                before = edge.getKey();
            }
        }
        return moments;
    }

    // the ends of a sweep are what the response is steepest at, and bass is delayed by its filters
    private TreeMap<Double, String> edges() {
        TreeMap<Double, String> edges = new TreeMap<>();
        for (Cue cue : ret.cues(Cue.class)) {
            if (cue instanceof Cue.Ladder ladder && ladder.frequencyHz() > LOWEST_HZ) {
                ladder.steps().forEach(s -> edge(edges, cue, s.startFrame(), s.frames()));
            } else if (cue instanceof Cue.Tone tone && tone.frequencyHz() > LOWEST_HZ
                    || cue instanceof Cue.Marker) {
                edge(edges, cue, cue.startFrame(), cue.frames());
            }
        }
        return edges;
    }

    private void edge(TreeMap<Double, String> edges, Cue cue, long frame, long frames) {
        edges.put(ret.sheet().seconds(frame), cue.id());
        edges.put(ret.sheet().seconds(frame + frames), cue.id());
    }

    private Optional<LateMoment> moment(String part, double edge) {
        double expected = ret.map().recordingSeconds(edge);
        double stretch = 1 / ret.map().speedRatio(edge);
        Envelope sent =
                Envelope.of(ret.programme().audio(), edge - HALF_WINDOW_S, edge + HALF_WINDOW_S);
        double reach = stretch * (HALF_WINDOW_S + FARTHEST_S);
        Envelope heard = Envelope.of(ret.recording(), expected - reach, expected + reach);
        int points = (int) Math.round(2 * HALF_WINDOW_S / STEP_S);
        int lags = (int) Math.round(FARTHEST_S / STEP_S);
        double[] shape = new double[points];
        double[] around = new double[points + 2 * lags];
        for (int i = 0; i < points; i++) {
            shape[i] = sent.at(edge - HALF_WINDOW_S + i * STEP_S);
        }
        for (int i = 0; i < around.length; i++) {
            around[i] = heard.at(expected + stretch * (-HALF_WINDOW_S + (i - lags) * STEP_S));
        }
        return new Likeness(shape, around)
                .best(ALIKE)
                .map(
                        place -> {
                            double late = expected + stretch * (place - lags) * STEP_S - edge;
                            return new LateMoment(part, edge, late);
                        });
    }
}
