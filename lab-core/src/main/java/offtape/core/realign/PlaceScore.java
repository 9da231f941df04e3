package offtape.core.realign;

/**
 * How alike two traces are where one is taken to lie at a place in the other, over a span of it.
 * What lies outside of the other counts as silence, so that a place that leaves some of the sound
 * without a counterpart is worse than one that does not.
 */
final class PlaceScore {

    private static final int ROUNDS = 60;
    private static final double FINEST_S = 0.002;

    /** A second counts that has this share of the mean energy. */
    private static final double LOUD = 0.2;

    /** Places differ where one is more alike by this. */
    private static final double APART = 0.3;

    private static final double PART_S = 10;
    private static final double REACH_S = 0.06;
    private static final double STEP_S = 0.003;

    /** Levels less alike than this tell no time. */
    private static final double CLEAR = 0.5;

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

    /** Whether anything in the sound tells one place from another, a second of it at least. */
    boolean tells(Place one, Place other) {
        int some = LevelTrace.RATE_HZ;
        double mean = original.energy(0, original.length()) * some / original.length();
        for (int from = 0; from + some <= original.length(); from += some) {
            double energy = original.energy(from, from + some);
            double a = at(one.start(), one.step(), from, from + some);
            double b = at(other.start(), other.step(), from, from + some);
            if (energy > LOUD * mean && a - b > APART) {
                return true;
            }
        }
        return false;
    }

    /**
     * The way of time by levels alone, for sounds so long that a machine's speed may wander from a
     * straight line: each ten seconds looked for near where the last ones lay, from the middle out.
     */
    Course course(Place place, double rate) {
        int count = (int) (original.length() / (LevelTrace.RATE_HZ * PART_S));
        if (count < 3) {
            return Course.line(place.start() * rate, place.step());
        }
        double[] late = new double[count];
        int middle = count / 2;
        late[middle] = late(place, middle, 0);
        for (int k = middle + 1; k < count; k++) {
            late[k] = late(place, k, late[k - 1]);
        }
        for (int k = middle - 1; k >= 0; k--) {
            late[k] = late(place, k, late[k + 1]);
        }
        double[] frames = new double[count];
        double[] slopes = new double[count];
        for (int k = 0; k < count; k++) {
            frames[k] = (k + 0.5) * PART_S * rate;
            int from = Math.max(0, k - 1);
            int to = Math.min(count - 1, k + 1);
            slopes[k] = (late[to] - late[from]) / ((to - from) * PART_S);
        }
        double[] frameLate = new double[count];
        for (int k = 0; k < count; k++) {
            frameLate[k] = late[k] * rate;
        }
        return new Course(place.start() * rate, place.step(), frames, frameLate, slopes);
    }

    private double late(Place place, int part, double near) {
        int span = (int) (PART_S * LevelTrace.RATE_HZ);
        int from = part * span;
        double best = near;
        double most = CLEAR;
        for (double d = -REACH_S; d <= REACH_S; d += STEP_S) {
            double likeness = at(place.start() + near + d, place.step(), from, from + span);
            if (likeness > most) {
                most = likeness;
                best = near + d;
            }
        }
        return best;
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
