package offtape.report.measure.line;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import offtape.core.fault.Background;

/**
 * The lines of a speed deviation: sines that noise does not explain. Below 4 Hz, where reels turn,
 * a line may move.
 *
 * <p>Noise makes a line in fewer than one recording of a hundred ({@link FalseAlarm}), as long as
 * its density is smooth over some thirty bins. What the tape does at random with a sharp resonance
 * can pass for a line, and a line whose part slips is broad and may show as several.
 */
public final class LineSearch {

    /** Lowest frequency that is looked at; slower is drift. */
    public static final double LOWEST_HZ = 0.15;

    /** Highest frequency that is looked at. */
    public static final double HIGHEST_HZ = 200;

    /** The beginning of a longer deviation is looked at for so long, seconds. */
    public static final double LONGEST_S = 600;

    /** Lines below are of no interest, percent. */
    public static final double LEAST_PERCENT = 0.001;

    private static final double REELS_TO_HZ = 4;
    private static final double SHORTEST_FOR_REELS_S = 12;

    /** Turns that a part has to make. */
    private static final double FEWEST_TURNS = 6;

    private static final double CHANCE = 0.01;

    private LineSearch() {}

    /**
     * Finds lines.
     *
     * @param modulation deviation about its mean, percent; not modified
     * @param rateHz samples a second, more than 400 for lines up to 200 Hz
     * @return largest first
     */
    public static List<FoundLine> find(double[] modulation, double rateHz) {
        double[] x = beginning(modulation, (int) (LONGEST_S * rateHz));
        double seconds = x.length / rateHz;
        double from = Math.max(LOWEST_HZ, FEWEST_TURNS / seconds);
        double to = Math.min(HIGHEST_HZ, 0.45 * rateHz);
        double split = seconds < SHORTEST_FOR_REELS_S ? from : REELS_TO_HZ;
        CompletableFuture<List<FoundLine>> slow =
                Background.start(() -> slow(x, rateHz, from, split));
        List<FoundLine> fast = fast(x, rateHz, split, to);
        List<FoundLine> lines = new ArrayList<>(Background.result(slow));
        fast.removeIf(f -> lines.stream().anyMatch(s -> isSame(f, s, seconds)));
        lines.addAll(fast);
        lines.sort(Comparator.comparingDouble(l -> -l.peakPercent()));
        return lines;
    }

    private static List<FoundLine> slow(double[] x, double rateHz, double from, double to) {
        if (!(to > from)) {
            return List.of();
        }
        List<BendGrid> grids = BendGrid.octaves(from, to, x.length / rateHz);
        return new BandSearch(LowBand.of(x, rateHz, to), grids, CHANCE / 2, LEAST_PERCENT).find();
    }

    private static List<FoundLine> fast(double[] x, double rateHz, double from, double to) {
        if (!(to > from)) {
            return new ArrayList<>();
        }
        List<BendGrid> grids = List.of(new BendGrid(from, to, new double[] {0}));
        // the search takes its lines out of what it is given, which the other one still reads
        Stretch own = new Stretch(x.clone(), rateHz);
        return new BandSearch(own, grids, CHANCE / 2, LEAST_PERCENT).find();
    }

    /** Whether a line on the edge of both bands was found in both. */
    private static boolean isSame(FoundLine fast, FoundLine slow, double seconds) {
        return Math.abs(fast.startHz() - slow.middleHz()) < 2 / seconds;
    }

    /** The beginning of a deviation, no longer than so many samples. */
    public static double[] beginning(double[] x, int most) {
        return Arrays.copyOf(x, Math.min(x.length, most));
    }
}
