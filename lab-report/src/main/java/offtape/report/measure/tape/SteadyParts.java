package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.unit.Decibels;

/**
 * The parts of a stretch in which a tone keeps its level and frequency. The level decides where one
 * ends: where it is another before and after (a gap, or the next step of a tone that is recorded at
 * several levels).
 */
final class SteadyParts {

    /**
     * A part.
     *
     * @param first its first cell
     * @param end the cell after its last
     * @param levelDb median level of all channels together
     */
    record Part(int first, int end, double levelDb) {

        int cells() {
            return end - first;
        }
    }

    /** Cells before and after that are compared. */
    private static final int REACH = 8;

    /** Of so many cells sorted by level, the one that counts: four may lie in a dropout. */
    private static final int RANK = 4;

    private static final double STEP_DB = 1.5;
    private static final double SHORTEST_S = 1.2;

    /** How far the quartiles of a tone's level and frequency may lie apart; noise scatters more. */
    private static final double UNSTEADY_DB = 2;

    private static final double UNSTEADY_SHARE = 0.012;

    /** A cell that is so far from the tone's frequency belongs to another one. */
    private static final double FOREIGN_SHARE = 0.02;

    private static final double GONE_DB = -300;

    /** A gap so short between equal levels is a dropout. */
    private static final double DROPOUT_S = 0.6;

    private static final double EQUAL_DB = 1;

    private final ToneCells cells;
    private final double[] levelDb;

    private SteadyParts(ToneCells cells) {
        this.cells = cells;
        this.levelDb = new double[cells.count()];
        Arrays.setAll(
                levelDb,
                i ->
                        isForeign(i)
                                ? GONE_DB
                                : Math.max(GONE_DB, Decibels.ofPower(cells.power(i) + 1e-300)));
    }

    /** All steady parts that are long enough, in order. */
    static List<Part> of(ToneCells cells) {
        return cells.count() < 2 * REACH ? List.of() : new SteadyParts(cells).parts();
    }

    private boolean isForeign(int cell) {
        int from = Math.max(0, cell - 2);
        int to = Math.min(cells.count(), cell + 3);
        double near = Ranked.median(IntStream.range(from, to).mapToDouble(cells::hz).toArray());
        return Math.abs(near / cells.carrierHz() - 1) > FOREIGN_SHARE;
    }

    private List<Part> parts() {
        List<Integer> edges = edges();
        List<Part> all = new ArrayList<>();
        for (int e = 0; e + 1 < edges.size(); e++) {
            Part part = part(edges.get(e), edges.get(e + 1));
            int same = before(part, all);
            if (same >= 0) {
                Part whole = part(all.get(same).first(), part.end());
                all.subList(same, all.size()).clear();
                all.add(whole);
            } else if (isSteady(part)) {
                all.add(part);
            }
        }
        return all.stream().filter(p -> p.cells() * cells.cellSeconds() >= SHORTEST_S).toList();
    }

    private Part part(int first, int end) {
        return new Part(first, end, Ranked.median(Arrays.copyOfRange(levelDb, first, end)));
    }

    /** The part that a dropout parts from this one, or −1. */
    private int before(Part part, List<Part> all) {
        for (int i = all.size() - 1; i >= 0 && isSteady(part); i--) {
            double gap = (part.first() - all.get(i).end()) * cells.cellSeconds();
            boolean isEqual = Math.abs(part.levelDb() - all.get(i).levelDb()) < EQUAL_DB;
            if (gap <= DROPOUT_S && isEqual) {
                return i;
            }
        }
        return -1;
    }

    private boolean isSteady(Part p) {
        double[] hz = IntStream.range(p.first(), p.end()).mapToDouble(cells::hz).toArray();
        double[] level = Arrays.copyOfRange(levelDb, p.first(), p.end());
        return p.levelDb() > GONE_DB / 2
                && Ranked.middleHalf(level) < UNSTEADY_DB
                && Ranked.middleHalf(hz) < UNSTEADY_SHARE * cells.carrierHz();
    }

    /** Where the level is another before and after, and both ends. */
    private List<Integer> edges() {
        int n = levelDb.length;
        double[] step = new double[n];
        for (int i = 1; i < n; i++) {
            step[i] = Math.abs(rank(i, i + REACH) - rank(i - REACH, i));
        }
        List<Integer> edges = new ArrayList<>(List.of(0));
        for (int i = 1; i < n; i++) {
            int last = i;
            while (last + 1 < n && step[last + 1] > STEP_DB) {
                last++;
            }
            if (step[i] > STEP_DB) {
                sharpest(i, last, step).forEach(edges::add);
                i = last;
            }
        }
        edges.add(n);
        return edges;
    }

    /** The steps within a stretch of large differences, REACH apart or more, steepest first. */
    private List<Integer> sharpest(int from, int to, double[] step) {
        List<Integer> found = new ArrayList<>();
        List<Integer> places =
                IntStream.rangeClosed(from, to)
                        .boxed()
                        .sorted((a, b) -> Double.compare(slope(b), slope(a)))
                        .toList();
        for (int place : places) {
            boolean isClear = found.stream().allMatch(f -> Math.abs(f - place) >= REACH / 2);
            if (isClear && slope(place) > STEP_DB / 2) {
                found.add(place);
            }
        }
        return found.stream().sorted().toList();
    }

    private double slope(int i) {
        double after = (levelDb[i] + levelDb[Math.min(levelDb.length - 1, i + 1)]) / 2;
        double before = (levelDb[i - 1] + levelDb[Math.max(0, i - 2)]) / 2;
        return Math.abs(after - before);
    }

    private double rank(int from, int to) {
        double[] x =
                Arrays.copyOfRange(
                        levelDb, Math.max(0, from), Math.min(levelDb.length, Math.max(to, 1)));
        Arrays.sort(x);
        return x[Math.min(x.length - 1, RANK)];
    }
}
