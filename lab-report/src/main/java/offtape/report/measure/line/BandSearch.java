package offtape.report.measure.line;

import java.util.ArrayList;
import java.util.List;

/**
 * The lines of one band of frequency. The strongest is fitted and taken out, then the next is
 * looked for in what is left, until noise explains the rest; then each is fitted once more without
 * the others, so that close lines do not bend each other.
 */
final class BandSearch {

    /** Lines nearer than this many bins to a stronger one are its own unrest … */
    private static final double OWN_BINS = 4;

    /** … unless they have this share of its peak. */
    private static final double OWN_SHARE = 0.3;

    private static final int MOST_LINES = 30;
    private static final int REFITS = 4;

    /** A bend is told from none if it is this many standard deviations away. */
    private static final double BENT = 4;

    /** A line whose own unrest is half as large as itself is none. */
    private static final double CLEAR = 2;

    /** What filters and neighbours may do to a peak, as a share of it, k = 2. */
    private static final double PEAK_ERROR = 0.001;

    /** What images and neighbours may do to a frequency, in bins, k = 2. */
    private static final double BIN_ERROR = 2e-4;

    private final Stretch rest;
    private final List<BendGrid> grids;
    private final double chance;
    private final double least;
    private final List<Line> lines = new ArrayList<>();

    /**
     * A search.
     *
     * @param stretch what is searched; the lines are taken out of it
     * @param grids what is tried
     * @param chance of one or more false lines
     * @param least peak of the smallest line that matters, percent
     */
    BandSearch(Stretch stretch, List<BendGrid> grids, double chance, double least) {
        this.rest = stretch;
        this.grids = grids;
        this.chance = chance;
        this.least = least;
    }

    private record Candidate(double hz, double bend, double power) {}

    /** All lines, in no order. */
    List<FoundLine> find() {
        double level =
                Math.log(chance / grids.stream().mapToDouble(g -> g.peaks(rest.seconds())).sum());
        List<Candidate> next = candidates(level);
        while (!next.isEmpty() && lines.size() < MOST_LINES) {
            for (Candidate c : next) {
                take(c);
            }
            refit(lines.size() < 2 ? 0 : 1);
            next = candidates(level);
        }
        refit(REFITS);
        return described();
    }

    private void take(Candidate c) {
        Line line = fitted(c.hz(), c.bend());
        rest.subtract(line, 1);
        lines.add(line);
    }

    private void refit(int times) {
        for (int i = 0; i < times; i++) {
            for (int l = 0; l < lines.size(); l++) {
                Line line = lines.get(l);
                rest.subtract(line, -1);
                Line better = fitted(line.hz(), line.bend());
                rest.subtract(better, 1);
                lines.set(l, better);
            }
        }
    }

    private boolean mayBend() {
        return grids.size() > 1;
    }

    private Line fitted(double hz, double bend) {
        if (!mayBend()) {
            return new LineFit(rest, false).fit(hz, 0);
        }
        LineFit bent = new LineFit(rest, true);
        Line line = bent.fit(hz, bend);
        double noise = LinePower.of(rest).noise(line.hz());
        boolean isBent = Math.abs(line.bend()) > BENT * bent.deviations(line, noise)[1];
        return isBent ? line : new LineFit(rest, false).fit(line.hz(), 0);
    }

    /** What noise does not explain: the strongest of all, or all if nothing may bend. */
    private List<Candidate> candidates(double level) {
        List<Candidate> found = new ArrayList<>();
        for (BendGrid grid : grids) {
            BentPower slow = new BentPower(mayBend() ? slow(grid.toHz()) : rest);
            for (double bend : grid.bends()) {
                LinePower power = bend == 0 ? LinePower.of(rest) : slow.of(bend);
                found.addAll(in(power, grid, bend, level));
            }
        }
        found.sort((a, b) -> Double.compare(b.power(), a.power()));
        return mayBend() ? found.subList(0, Math.min(1, found.size())) : apart(found);
    }

    private Stretch slow(double hz) {
        return LowBand.of(rest.samples(), rest.rateHz(), hz);
    }

    /** Without those that a stronger one's lobe may have made. */
    private List<Candidate> apart(List<Candidate> sorted) {
        List<Candidate> kept = new ArrayList<>();
        for (Candidate c : sorted) {
            double reach = 2 * OWN_BINS / rest.seconds();
            boolean own = kept.stream().anyMatch(k -> Math.abs(k.hz() - c.hz()) < reach);
            if (!own) {
                kept.add(c);
            }
        }
        return kept;
    }

    private List<Candidate> in(LinePower power, BendGrid grid, double bend, double level) {
        List<Candidate> found = new ArrayList<>();
        int last = Math.min(power.size() - 1, (int) Math.ceil(grid.toHz() / power.binHz()));
        for (int k = Math.max(1, (int) (grid.fromHz() / power.binHz())); k <= last; k++) {
            if (power.isTop(k) && power.power(k) > least * least && power.logChance(k) < level) {
                Candidate c = new Candidate(k * power.binHz(), bend, power.power(k));
                if (lines.stream().noneMatch(l -> owns(l, c))) {
                    found.add(c);
                }
            }
        }
        return found;
    }

    /** Whether a candidate is no more than the unrest of a line that is known. */
    private boolean owns(Line line, Candidate c) {
        double half = rest.seconds() / 2;
        double reach = OWN_BINS / rest.seconds();
        double a = line.hzAt(-half);
        double b = line.hzAt(half);
        boolean near = c.hz() > Math.min(a, b) - reach && c.hz() < Math.max(a, b) + reach;
        return near && Math.sqrt(c.power()) < OWN_SHARE * line.peak();
    }

    private List<FoundLine> described() {
        LinePower power = LinePower.of(rest);
        List<FoundLine> found = new ArrayList<>();
        for (Line line : lines) {
            FoundLine l = described(line, power);
            if (l.peakPercent() > Math.max(least, CLEAR * l.peakUncertainty()) && inBand(line)) {
                found.add(l);
            }
        }
        return found;
    }

    /** A line on the very edge must not fall between this band and the next. */
    private boolean inBand(Line line) {
        double edge = 1 / rest.seconds();
        return grids.stream()
                .anyMatch(g -> line.hz() >= g.fromHz() - edge && line.hz() <= g.toHz() + edge);
    }

    private FoundLine described(Line line, LinePower power) {
        double around = power.noise(line.hz());
        double left = power.left(line.hz());
        // a line that is not quite a sine leaves more than noise behind
        double noise = left > 3 * around ? left : around;
        double seconds = rest.seconds();
        double[] sigma = new LineFit(rest, mayBend()).deviations(line, noise);
        double change = mayBend() ? sigma[1] * line.hz() / 2 : 0;
        double end = line.moves() ? change * seconds / 2 : 0;
        double a = line.hzAt(-seconds / 2);
        double b = line.hzAt(seconds / 2);
        return new FoundLine(
                a,
                b,
                Math.hypot(2 * Math.hypot(sigma[0], end), BIN_ERROR / seconds),
                line.peak(),
                Math.hypot(2 * Math.sqrt(noise / 2), PEAK_ERROR * line.peak()),
                (b - a) / seconds,
                2 * change);
    }
}
