package offtape.core.realign;

/**
 * How alike two traces are where one is taken to lie at a place in the other, over a span of it.
 * What lies outside of the other counts as silence, so that a place that leaves some of the sound
 * without a counterpart is worse than one that does not.
 */
final class PlaceScore {

    private static final int ROUNDS = 60;
    private static final double FINEST_S = 0.002;

    private final LevelTrace original;
    private final LevelTrace returned;

    PlaceScore(LevelTrace original, LevelTrace returned) {
        this.original = original;
        this.returned = returned;
    }

    /** Likeness over the values from one to before another. */
    double at(double start, double step, int from, int to) {
        double both = 0;
        double one = 0;
        double other = 0;
        double first = start * LevelTrace.RATE_HZ;
        for (int b = 0; b < original.bands(); b++) {
            for (int i = from; i < to; i++) {
                double x = original.at(b, i);
                double y = returned.at(b, first + step * i);
                both += x * y;
                one += x * x;
                other += y * y;
            }
        }
        double size = Math.sqrt(one * other);
        return size > 0 ? both / size : 0;
    }

    /** Likeness over all of it. */
    double at(Place place) {
        return at(place.start(), place.step(), 0, original.length());
    }

    /**
     * The best place near one that was found for a part of the sound: the part is made twice as
     * long again and again, and each time place and speed are sharpened.
     */
    Place climbed(Place near, int from, int to) {
        int low = from;
        int high = to;
        Place best = sharpened(near, low, high);
        while (low > 0 || high < original.length()) {
            int more = high - low;
            low = Math.max(0, low - more / 2);
            high = Math.min(original.length(), high + more - more / 2);
            best = sharpened(best, low, high);
        }
        return best;
    }

    private Place sharpened(Place near, int from, int to) {
        double middle = (from + to) / 2.0 / LevelTrace.RATE_HZ;
        double half = Math.max(0.5, (to - from) / 2.0 / LevelTrace.RATE_HZ);
        Place best = new Place(near.start(), near.step(), at(near.start(), near.step(), from, to));
        double reach = 0.016;
        for (int round = 0; round < ROUNDS && reach >= FINEST_S; round++) {
            Place next = best;
            for (int k = 0; k < 4; k++) {
                double late = k < 2 ? (k * 2 - 1) * reach : 0;
                double slow = k < 2 ? 0 : (k * 2 - 5) * reach / half;
                double step = best.step() + slow;
                double start = best.at(middle) + late - step * middle;
                double likeness = at(start, step, from, to);
                if (likeness > next.likeness()) {
                    next = new Place(start, step, likeness);
                }
            }
            reach = next == best ? reach / 2 : reach;
            best = next;
        }
        return best;
    }
}
