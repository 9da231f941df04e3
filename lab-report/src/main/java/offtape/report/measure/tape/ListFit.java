package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import offtape.core.tape.ListedTone;

/**
 * Tones that are heard laid beside a list, both in their order, all by one factor of speed: the
 * most pairs, and of those ways the one whose levels agree best (the same tone may be listed twice
 * at different levels).
 *
 * @param factor heard over listed
 * @param entry for each tone the number of its entry, or −1
 */
record ListFit(double factor, int[] entry) {

    private static final double TOLERANCE = 0.015;

    /** Worth of a pair; a pair whose level is off by decibels is worth less, but more than none. */
    private static final double PAIR = 100;

    private static final double MOST_OFF_DB = 40;

    /** How many tones have an entry. */
    int matched() {
        return (int) Arrays.stream(entry).filter(e -> e >= 0).count();
    }

    /** The best way; speeds half and double count as well. */
    static ListFit of(List<HeardTone> heard, List<ListedTone> list) {
        double[] hz = heard.stream().mapToDouble(HeardTone::hz).toArray();
        double[] listed = list.stream().mapToDouble(ListedTone::frequencyHz).toArray();
        List<ListFit> all = new ArrayList<>();
        for (double[] range :
                new double[][] {SpeedGuess.RIGHT, SpeedGuess.HALF, SpeedGuess.DOUBLE}) {
            for (double factor :
                    SpeedGuess.of(SeriesFit.distinct(hz), SeriesFit.distinct(listed), range)) {
                all.add(aligned(heard, list, factor));
            }
        }
        return all.stream()
                .max(
                        Comparator.comparingInt(ListFit::matched)
                                .thenComparingDouble(f -> -Math.abs(Math.log(f.factor))))
                .orElse(new ListFit(1, unmatched(heard.size())));
    }

    private static int[] unmatched(int count) {
        int[] none = new int[count];
        Arrays.fill(none, -1);
        return none;
    }

    /** Dynamic programming over both orders. */
    private static ListFit aligned(List<HeardTone> heard, List<ListedTone> list, double factor) {
        int n = heard.size();
        int m = list.size();
        double[][] worth = new double[n + 1][m + 1];
        double zero = zeroDb(heard, list, factor);
        for (int i = n - 1; i >= 0; i--) {
            for (int j = m - 1; j >= 0; j--) {
                worth[i][j] =
                        Math.max(
                                Math.max(worth[i + 1][j], worth[i][j + 1]),
                                pair(heard.get(i), list.get(j), factor, zero)
                                        + worth[i + 1][j + 1]);
            }
        }
        int[] entry = unmatched(n);
        double logs = 0;
        int i = 0;
        int j = 0;
        while (i < n && j < m) {
            double pair = pair(heard.get(i), list.get(j), factor, zero);
            if (pair > 0 && worth[i][j] == pair + worth[i + 1][j + 1]) {
                logs += Math.log(heard.get(i).hz() / list.get(j).frequencyHz());
                entry[i++] = j++;
            } else if (worth[i][j] == worth[i + 1][j]) {
                i++;
            } else {
                j++;
            }
        }
        ListFit fit = new ListFit(factor, entry);
        return fit.matched() == 0 ? fit : new ListFit(Math.exp(logs / fit.matched()), entry);
    }

    private static double pair(HeardTone tone, ListedTone listed, double factor, double zero) {
        if (!isNear(tone, listed, factor)) {
            return 0;
        }
        double off =
                listed.levelDb() == null ? 0 : Math.abs(tone.loudestDb() - zero - listed.levelDb());
        return PAIR - Math.min(MOST_OFF_DB, off);
    }

    private static boolean isNear(HeardTone tone, ListedTone listed, double factor) {
        return Math.abs(Math.log(tone.hz() / factor / listed.frequencyHz())) < TOLERANCE;
    }

    /** What a tone listed with 0 dB comes back as, by the median of all that may be pairs. */
    private static double zeroDb(List<HeardTone> heard, List<ListedTone> list, double factor) {
        double[] all =
                heard.stream()
                        .flatMapToDouble(
                                t ->
                                        list.stream()
                                                .filter(l -> l.levelDb() != null)
                                                .filter(l -> isNear(t, l, factor))
                                                .mapToDouble(l -> t.loudestDb() - l.levelDb()))
                        .filter(Double::isFinite)
                        .toArray();
        return all.length == 0 ? 0 : Ranked.median(all);
    }
}
