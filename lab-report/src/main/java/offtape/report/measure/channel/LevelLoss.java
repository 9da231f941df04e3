package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Short losses in one curve of level. Valleys are looked for from narrow to wide; each is judged
 * against the level just before and after it, so that a slow wave of level is none, and is filled
 * before wider ones are looked for, so that a short loss at the bottom of a slow wave has its own
 * depth. A wider valley with steep sides takes in what was found inside it.
 */
final class LevelLoss {

    /** A loss of 3 dB is found though its edges are softened and noise lies on it. */
    private static final double LEAST_DEPTH_DB = 2.9;

    /** A loss of 10 ms is found though its length is read some tenths short. */
    private static final double LEAST_MS = 9.2;

    /** The length is read so far down, or half as far above the bottom of a shallow one. */
    private static final double MARK_DB = 3;

    private static final double[] WIDTHS_S = {0.02, 0.06, 0.2, 0.6, 1.7};
    private static final double RIM_DB = 1;
    private static final double BESIDE_S = 0.06;
    private static final double ALIKE_DB = 1.5;

    /** From and to these shares of the depth one side at least takes no longer than this. */
    private static final double SIDE_FROM = 0.3;

    private static final double SIDE_TO = 0.8;
    private static final double SIDE_S = 0.2;

    private final LevelCurve curve;
    private final List<Loss> losses = new ArrayList<>();

    /**
     * One loss.
     *
     * @param startSeconds in the recording
     * @param milliseconds between the points 3 dB down, or 1.5 dB above the bottom of one that is
     *     not as deep as 4.5 dB
     * @param depthDb greatest loss re the level beside
     */
    record Loss(double startSeconds, double milliseconds, double depthDb, int from, int to) {

        double endSeconds() {
            return startSeconds + milliseconds / 1000;
        }
    }

    private LevelLoss(LevelCurve curve) {
        this.curve = curve;
    }

    /** The losses of a curve in order of time. */
    static List<Loss> in(LevelCurve curve) {
        LevelLoss search = new LevelLoss(curve);
        double[] level = curve.db().clone();
        for (double width : WIDTHS_S) {
            level = search.fill(level, curve.samples(width));
        }
        search.losses.removeIf(l -> l.milliseconds() < LEAST_MS);
        search.losses.sort(Comparator.comparingDouble(Loss::startSeconds));
        return search.losses;
    }

    /** Finds the losses up to a width and gives the curve without them. */
    private double[] fill(double[] level, int width) {
        double[] filled = Valleys.filled(level, width);
        double[] left = level.clone();
        int start = -1;
        for (int k = 0; k <= level.length; k++) {
            boolean low = k < level.length && filled[k] - level[k] > RIM_DB;
            if (low && start < 0) {
                start = k;
            } else if (!low && start >= 0) {
                if (take(level, filled, start, k)) {
                    System.arraycopy(filled, start, left, start, k - start);
                }
                start = -1;
            }
        }
        return left;
    }

    /** Whether the valley between two samples is a loss; if so it is kept. */
    private boolean take(double[] level, double[] filled, int from, int to) {
        int skip = curve.samples(0.003);
        int beside = curve.samples(BESIDE_S);
        double before = mean(level, filled, from - skip - beside, from - skip);
        double after = mean(level, filled, to + skip, to + skip + beside);
        Rim rim = Rim.of(from, to, before, after);
        double without = depth(rim, level);
        if (!(without >= LEAST_DEPTH_DB) || !isSteep(rim, level, without)) {
            return false;
        }
        double depth = depth(rim, curve.db());
        double mark = Math.max(MARK_DB / 2, Math.min(MARK_DB, depth - MARK_DB / 2));
        double first = crossing(rim, mark, from, 1);
        double last = crossing(rim, mark, to - 1, -1);
        losses.removeIf(l -> l.from() >= from && l.to() <= to);
        losses.add(
                new Loss(
                        curve.seconds(first),
                        1000 * (last - first) / curve.rateHz(),
                        depth,
                        from,
                        to));
        return true;
    }

    /** The level to either side of a valley; straight in between. */
    private record Rim(int from, int to, double before, double after) {

        /** A side that is not known, or lies in another loss, follows the other. */
        static Rim of(int from, int to, double before, double after) {
            boolean oneSided = !(Math.abs(before - after) < ALIKE_DB);
            double higher = Double.isNaN(before) || after > before ? after : before;
            return oneSided ? new Rim(from, to, higher, higher) : new Rim(from, to, before, after);
        }

        double at(int k) {
            return before + (after - before) * (k - from) / Math.max(1, to - from);
        }
    }

    private double loss(Rim rim, int k) {
        return rim.at(k) - curve.db()[k];
    }

    /** Greatest loss, of means over an eighth of the length so that noise does not deepen it. */
    private double depth(Rim rim, double[] level) {
        int across = Math.max(1, Math.min((rim.to() - rim.from()) / 8, curve.samples(0.02)));
        double sum = 0;
        double greatest = 0;
        for (int k = rim.from(); k < rim.to(); k++) {
            sum += rim.at(k) - level[k];
            if (k - across >= rim.from()) {
                sum -= rim.at(k - across) - level[k - across];
            }
            if (k - rim.from() + 1 >= across) {
                greatest = Math.max(greatest, sum / across);
            }
        }
        return greatest;
    }

    /** Whether the greater part of the loss comes or goes quickly, unlike in a wave of level. */
    private boolean isSteep(Rim rim, double[] level, double depth) {
        int shortest = Integer.MAX_VALUE;
        for (int direction = -1; direction <= 1; direction += 2) {
            int high = -1;
            for (int k = direction > 0 ? rim.from() : rim.to() - 1;
                    k >= rim.from() && k < rim.to();
                    k += direction) {
                double loss = rim.at(k) - level[k];
                high = loss < SIDE_FROM * depth || high < 0 ? k : high;
                if (loss >= SIDE_TO * depth) {
                    shortest = Math.min(shortest, Math.abs(k - high));
                    break;
                }
            }
        }
        return shortest < curve.samples(SIDE_S);
    }

    /** Where the loss first exceeds a mark, walking inwards from a rim; samples. */
    private double crossing(Rim rim, double mark, int from, int direction) {
        int k = from;
        while (k + direction >= rim.from() && k + direction < rim.to() && loss(rim, k) < mark) {
            k += direction;
        }
        int outside = k - direction;
        if (outside < 0 || outside >= curve.db().length) {
            return k;
        }
        double here = loss(rim, k);
        double there = loss(rim, outside);
        double part = here > there ? Math.max(0, Math.min(1, (here - mark) / (here - there))) : 0;
        return k - direction * part;
    }

    /** Mean of what lies in no valley; NaN if there is none. */
    private static double mean(double[] level, double[] filled, int from, int to) {
        double sum = 0;
        int count = 0;
        for (int k = Math.max(0, from); k < Math.min(level.length, to); k++) {
            if (filled[k] - level[k] <= RIM_DB) {
                sum += level[k];
                count++;
            }
        }
        return count > 0 ? sum / count : Double.NaN;
    }
}
