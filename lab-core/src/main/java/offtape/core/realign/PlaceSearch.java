package offtape.core.realign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds roughly where a track lies in its return. Parts of half a minute are sought by correlation
 * at all speeds, each good place is followed out to the whole length, and there every other place
 * is tried at the speed that was found, so that music that repeats itself is judged by the whole of
 * it.
 */
final class PlaceSearch {

    /** How far it is looked for to either side, seconds. */
    static final double FARTHEST_S = 600;

    /** How far the speed may be off, as a share. */
    static final double MOST_OFF = 0.03;

    /** Places are listed up to here: the search by parts may be off by some. */
    private static final double LISTED_S = FARTHEST_S + 1;

    private static final int RATE = LevelTrace.RATE_HZ;
    private static final double PART_S = 30;
    private static final int PARTS = 3;
    private static final int KEPT = 6;

    /** Places nearer than this are one, seconds. */
    private static final double SAME_S = 0.15;

    private final LevelTrace original;
    private final LevelTrace returned;
    private final PlaceScore score;

    PlaceSearch(LevelTrace original, LevelTrace returned) {
        this.original = original;
        this.returned = returned;
        this.score = new PlaceScore(original, returned);
    }

    /** The places found, the most alike first, with the whole length looked at; none if silent. */
    List<Place> find() {
        List<Place> found = new ArrayList<>();
        int part = (int) Math.min(original.length(), PART_S * RATE);
        for (int from : parts(part)) {
            for (Place near : best(partPlaces(from, part), from / (double) RATE)) {
                found.add(score.climbed(near, from, from + part));
            }
        }
        List<Place> clear = best(found, 0);
        if (clear.isEmpty()) {
            return clear;
        }
        for (Place other : best(shifted(clear.get(0).step()), 0)) {
            found.add(score.climbed(other, 0, original.length()));
        }
        return best(found, 0);
    }

    /** Beginnings of the parts of the track in which most happens. */
    private List<Integer> parts(int part) {
        List<Integer> all = new ArrayList<>();
        for (int at = 0; at + part <= original.length(); at += Math.max(1, part / 2)) {
            all.add(at);
        }
        all.sort(
                Comparator.comparingDouble((Integer at) -> -original.energy(at, at + part))
                        .thenComparing(Comparator.naturalOrder()));
        return all.subList(0, Math.min(PARTS, all.size()));
    }

    private List<Place> partPlaces(int from, int part) {
        double slack = MOST_OFF * from + 2 * RATE;
        int first = (int) Math.max(0, from - FARTHEST_S * RATE - slack);
        int last =
                (int)
                        Math.min(
                                returned.length(),
                                from + part * (1 + MOST_OFF) + FARTHEST_S * RATE + slack);
        List<Place> found = new ArrayList<>();
        if (last <= first) {
            return found;
        }
        int longest = (int) Math.ceil(part * (1 + MOST_OFF));
        Lags lags = new Lags(original, returned, first, last, longest, LISTED_S);
        double grid = 0.6 / (part / 2.0);
        int steps = (int) Math.ceil(MOST_OFF / grid);
        for (int k = -steps; k <= steps; k++) {
            double step = 1 + k * grid;
            found.addAll(best(lags.places(from, part, step), from / (double) RATE));
        }
        return found;
    }

    private List<Place> shifted(double step) {
        double reach = FARTHEST_S * RATE;
        int last = (int) Math.min(returned.length(), original.length() * step + reach);
        int longest = (int) Math.ceil(original.length() * step);
        Lags lags = new Lags(original, returned, 0, last, longest, LISTED_S);
        return lags.places(0, original.length(), step);
    }

    /** The best places, those that are as good as the same left out. */
    private static List<Place> best(List<Place> all, double at) {
        List<Place> sorted = new ArrayList<>(all);
        sorted.removeIf(p -> p.likeness() <= 0);
        sorted.sort(Comparator.comparingDouble(p -> -p.likeness()));
        List<Place> kept = new ArrayList<>();
        for (Place p : sorted) {
            if (kept.size() < KEPT
                    && kept.stream().noneMatch(k -> Math.abs(k.at(at) - p.at(at)) < SAME_S)) {
                kept.add(p);
            }
        }
        return kept;
    }
}
