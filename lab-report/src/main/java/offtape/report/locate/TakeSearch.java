package offtape.report.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds every place at which a recording begins to hold the programme, at a speed once known. */
final class TakeSearch {

    /** The beginning by which a take is known: this long, or a third of a shorter programme. */
    private static final double BEGINNING_S = 15;

    private static final double LIKE = 0.7;

    /** Places nearer than this are the same one. */
    static final double SAME_S = 1.5;

    /** Takes are as long if they differ by less than this. */
    private static final double AS_LONG_S = 1;

    private final SpectralTrace programme;
    private final SpectralTrace recording;
    private final AnchorCheck check;

    /** Whether the programme's first marker is heard if it begins at a place. */
    @FunctionalInterface
    interface AnchorCheck {
        boolean heard(CoarseSearch.Match place);
    }

    /**
     * Prepares a search.
     *
     * @param programme without its silence
     * @param recording with vectors as far apart
     */
    TakeSearch(SpectralTrace programme, SpectralTrace recording, AnchorCheck check) {
        this.programme = programme;
        this.recording = recording;
        this.check = check;
    }

    /**
     * All takes in order, the one that was found first among them even if its beginning is missing.
     */
    List<Take> takes(CoarseSearch.Match found) {
        List<CoarseSearch.Match> places = beginnings(found);
        if (places.stream().noneMatch(p -> same(p, found))) {
            places.add(found);
        }
        places.sort(Comparator.comparingDouble(CoarseSearch.Match::offsetSeconds));
        List<Take> takes = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            HeardPart heard = HeardPart.of(programme, recording, places.get(i));
            double next =
                    i + 1 < places.size()
                            ? places.get(i + 1).offsetSeconds()
                            : recording.hops() * recording.hopSeconds();
            double from = places.get(i).offsetSeconds();
            boolean whole = from > -SAME_S && heard.toEnd() && heard.toSeconds() < next + SAME_S;
            takes.add(new Take(from, Math.min(next, heard.toSeconds()), whole));
        }
        return takes;
    }

    private List<CoarseSearch.Match> beginnings(CoarseSearch.Match found) {
        double hop = programme.hopSeconds();
        int length = Math.min((int) (BEGINNING_S / hop), programme.hops() / 3);
        double[] like =
                new CoarseSearch(programme, recording)
                        .likenessOfBeginning(programme.beginning(length), found.stretch());
        int apart = (int) Math.ceil(SAME_S / hop);
        List<CoarseSearch.Match> places = new ArrayList<>();
        for (int h = 0; h < like.length; h++) {
            if (like[h] >= LIKE && isPeak(like, h, apart)) {
                CoarseSearch.Match place =
                        new CoarseSearch.Match(h * hop, found.stretch(), like[h]);
                if (same(place, found) || check.heard(place)) {
                    places.add(place);
                }
            }
        }
        return places;
    }

    private static boolean same(CoarseSearch.Match a, CoarseSearch.Match b) {
        return Math.abs(a.offsetSeconds() - b.offsetSeconds()) < SAME_S;
    }

    private static boolean isPeak(double[] like, int at, int apart) {
        for (int i = Math.max(0, at - apart); i < Math.min(like.length, at + apart + 1); i++) {
            if (like[i] > like[at] || like[i] == like[at] && i < at) {
                return false;
            }
        }
        return true;
    }

    /**
     * The take to measure: the last of the whole ones; if none is whole, the last of the longest.
     */
    static Take choice(List<Take> takes) {
        boolean anyWhole = takes.stream().anyMatch(Take::whole);
        double longest = takes.stream().mapToDouble(Take::seconds).max().orElseThrow();
        return takes.stream()
                .filter(t -> anyWhole ? t.whole() : t.seconds() > longest - AS_LONG_S)
                .reduce((a, b) -> b)
                .orElseThrow();
    }
}
