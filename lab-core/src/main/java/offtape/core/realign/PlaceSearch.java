package offtape.core.realign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

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
        Lags lags = new Lags(first, last, (int) Math.ceil(part * (1 + MOST_OFF)));
        double grid = 0.6 / (part / 2.0);
        int steps = (int) Math.ceil(MOST_OFF / grid);
        for (int k = -steps; k <= steps; k++) {
            found.addAll(best(lags.places(from, part, 1 + k * grid), from / (double) RATE));
        }
        return found;
    }

    private List<Place> shifted(double step) {
        double reach = FARTHEST_S * RATE;
        int first = 0;
        int last = (int) Math.min(returned.length(), original.length() * step + reach);
        return new Lags(first, last, (int) Math.ceil(original.length() * step))
                .places(0, original.length(), step);
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

    /** Correlation of parts of the track with a stretch of the return at all lags. */
    private final class Lags {

        private final int first;
        private final int length;
        private final int before;
        private final RealFft fft;
        private final Spectrum[] heard;
        private final double[] energy;

        Lags(int first, int last, int longest) {
            this.first = first;
            this.length = last - first;
            // a part may begin before the return does
            this.before = longest;
            this.fft = RealFft.ofSize(RealFft.nextPowerOfTwo(length + 2 * longest));
            this.heard = new Spectrum[returned.bands()];
            this.energy = new double[length + 2 * before + 1];
            double[] squares = new double[length + 2 * before];
            for (int b = 0; b < heard.length; b++) {
                double[] x = returned.stretched(b, first - before, length + before, 1, fft.size());
                heard[b] = fft.forward(x);
                for (int i = 0; i < length + before; i++) {
                    squares[i] += x[i] * x[i];
                }
            }
            for (int i = 0; i < squares.length; i++) {
                energy[i + 1] = energy[i] + squares[i];
            }
        }

        List<Place> places(int from, int part, double step) {
            int span = (int) Math.ceil(part * step);
            double[] re = new double[fft.size() / 2 + 1];
            double[] im = new double[re.length];
            double sought = 0;
            for (int b = 0; b < heard.length; b++) {
                double[] x = original.stretched(b, from, span, 1 / step, fft.size());
                for (double v : x) {
                    sought += v * v;
                }
                Spectrum product = heard[b].timesConjugate(fft.forward(x));
                for (int k = 0; k < re.length; k++) {
                    re[k] += product.re(k);
                    im[k] += product.im(k);
                }
            }
            double[] both = fft.inverse(Spectrum.of(fft.size(), re, im));
            return peaks(both, sought, span, from * step, step);
        }

        private List<Place> peaks(
                double[] both, double sought, int span, double from, double step) {
            List<Place> found = new ArrayList<>();
            double share = Math.min(1, span / (double) length);
            double least = 0.2 * share * energy[energy.length - 1];
            for (int k = 1; k < length + before; k++) {
                if (both[k] > 0 && both[k] >= both[k - 1] && both[k] > both[k + 1]) {
                    double there = energy[Math.min(energy.length - 1, k + span)] - energy[k];
                    double size = Math.sqrt(sought * Math.max(there, least));
                    double start = (first - before + k - from) / RATE;
                    if (size > 0 && Math.abs(start) < FARTHEST_S + 1) {
                        found.add(new Place(start, step, both[k] / size));
                    }
                }
            }
            return found;
        }
    }
}
