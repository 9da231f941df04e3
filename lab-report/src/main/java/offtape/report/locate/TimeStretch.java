package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * A return whose course of time does not go with its pitch: stretched by a workstation that keeps
 * the pitch. Tape changes both together. Sound that is missing at one place also makes a return
 * shorter than its tones say, but not evenly from beginning to end.
 */
final class TimeStretch {

    /** What the search knows of the length, and what transports may change by, as a share. */
    private static final double LEAST = 0.0025;

    /** So much of the programme must be heard, and so like. */
    private static final double WHOLE = 0.75;

    private static final double LIKE = 0.85;

    /** About an edge so much to either side is compared. */
    private static final double SIDE_S = 0.6;

    private static final double APART_S = 0.5;

    /** An edge is clear if a place so far off is less like by so much. */
    private static final double OFF_S = 0.3;

    private static final double CLEAR = 0.03;
    private static final int FEWEST = 8;

    /**
     * Lateness may scatter about a straight line by this share of what it grows to: one step in the
     * middle scatters by a sixth.
     */
    private static final double STRAIGHT = 0.1;

    /** Length and lateness must tell the same, but for such a share. */
    private static final double SAME = 0.3;

    private final CueSheet sheet;
    private final SpectralTrace programme;
    private final SpectralTrace recording;

    /**
     * Prepares a look.
     *
     * @param programme without its silence
     * @param recording with vectors as far apart
     */
    TimeStretch(CueSheet sheet, SpectralTrace programme, SpectralTrace recording) {
        this.sheet = sheet;
        this.programme = programme;
        this.recording = recording;
    }

    /**
     * How much longer the return lasts than its pitch says, as a share; empty if the two agree or
     * lateness does not grow evenly.
     *
     * @param match place and length
     * @param byPitch the stretch that the tones say
     */
    OptionalDouble of(CoarseSearch.Match match, HeardPart part, double byPitch) {
        double longer = match.stretch() / byPitch - 1;
        if (Math.abs(longer) < LEAST || part.share() < WHOLE || part.likeness() < LIKE) {
            return OptionalDouble.empty();
        }
        SpectralTrace wanted = programme.stretched(byPitch);
        SimpleRegression line = new SimpleRegression();
        List<double[]> points = new ArrayList<>();
        for (double edge : edges()) {
            double at = match.offsetSeconds() + edge * match.stretch();
            OptionalDouble found = place(wanted, edge * byPitch, at, Math.abs(longer) + LEAST);
            if (found.isPresent()) {
                points.add(new double[] {edge, found.getAsDouble() - edge * byPitch});
                line.addData(edge, found.getAsDouble() - edge * byPitch);
            }
        }
        if (points.size() < FEWEST) {
            return OptionalDouble.empty();
        }
        double squares = 0;
        for (double[] p : points) {
            squares += Math.pow(p[1] - line.predict(p[0]), 2);
        }
        double grown =
                Math.abs(line.getSlope()) * (points.get(points.size() - 1)[0] - points.get(0)[0]);
        boolean even = Math.sqrt(squares / points.size()) < STRAIGHT * grown;
        double slope = line.getSlope() / byPitch;
        boolean same = Math.abs(slope / longer - 1) < SAME;
        return even && same ? OptionalDouble.of(longer) : OptionalDouble.empty();
    }

    /** Where parts begin and end, programme seconds, not too near to each other. */
    private List<Double> edges() {
        TreeSet<Double> all = new TreeSet<>();
        for (Cue cue : sheet.cues()) {
            if (!(cue instanceof Cue.Silence)) {
                all.add(sheet.seconds(cue.startFrame()));
                all.add(sheet.seconds(cue.endFrame()));
            }
        }
        List<Double> kept = new ArrayList<>();
        for (double edge : all) {
            if (kept.isEmpty() || edge - kept.get(kept.size() - 1) > APART_S) {
                kept.add(edge);
            }
        }
        return kept;
    }

    /**
     * Where an edge is heard, seconds of the recording.
     *
     * @param from where it is in the trace of the programme, seconds
     * @param about where it is sought
     * @param share how far off, as a share of the programme's length
     */
    private OptionalDouble place(SpectralTrace wanted, double from, double about, double share) {
        double hop = wanted.hopSeconds();
        int middle = (int) Math.rint(from / hop);
        int side = (int) (SIDE_S / hop);
        int centre = (int) Math.rint((about - from) / hop);
        int reach = (int) Math.ceil(share * wanted.hops() / 2);
        double[] alike = new double[2 * reach + 1];
        int best = 0;
        for (int i = 0; i < alike.length; i++) {
            for (int h = middle - side; h < middle + side; h++) {
                alike[i] += wanted.likeness(h, recording, h + centre - reach + i) / (2 * side);
            }
            best = alike[i] > alike[best] ? i : best;
        }
        int off = (int) (OFF_S / hop);
        boolean clear = true;
        for (int i = best - off; i <= best + off; i += 2 * off) {
            clear &= i < 0 || i >= alike.length || alike[i] < alike[best] - CLEAR;
        }
        return clear
                ? OptionalDouble.of((middle + centre - reach + best) * hop)
                : OptionalDouble.empty();
    }
}
