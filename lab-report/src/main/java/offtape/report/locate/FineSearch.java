package offtape.report.locate;

import java.util.Comparator;
import java.util.stream.IntStream;

/** Sharpens a match that is known to some tenths of a second and some tenths of a percent. */
final class FineSearch {

    private static final double STEP = 0.0005;
    private static final int STEPS = 9;
    private static final double REACH_S = 0.4;

    private final SpectralTrace programme;
    private final SpectralTrace recording;

    /**
     * Prepares a search.
     *
     * @param programme without its silence
     * @param recording with vectors as far apart
     */
    FineSearch(SpectralTrace programme, SpectralTrace recording) {
        this.programme = programme;
        this.recording = recording;
    }

    /** The best match near one that is roughly right. */
    CoarseSearch.Match near(CoarseSearch.Match rough) {
        double hop = programme.hopSeconds();
        double from = Math.max(0, rough.offsetSeconds());
        double length = programme.hops() * hop * rough.stretch();
        double to = Math.min(recording.hops() * hop, rough.offsetSeconds() + length);
        double middle = (from + to) / 2;
        double inProgramme = (middle - rough.offsetSeconds()) / rough.stretch();
        return IntStream.rangeClosed(-STEPS, STEPS)
                .mapToDouble(i -> rough.stretch() * (1 + i * STEP))
                .boxed()
                .toList()
                .parallelStream()
                .map(stretch -> at(stretch, middle - stretch * inProgramme))
                .max(Comparator.comparingDouble(CoarseSearch.Match::likeness))
                .orElseThrow();
    }

    private CoarseSearch.Match at(double stretch, double expectedSeconds) {
        SpectralTrace wanted = programme.stretched(stretch);
        double hop = programme.hopSeconds();
        int expected = (int) Math.rint(expectedSeconds / hop);
        int reach = (int) Math.ceil(REACH_S / hop);
        double most = -1;
        int best = expected;
        for (int lag = expected - reach; lag <= expected + reach; lag++) {
            double sum = 0;
            for (int h = Math.max(0, -lag); h < wanted.hops() && h + lag < recording.hops(); h++) {
                sum += wanted.likeness(h, recording, h + lag);
            }
            if (sum > most) {
                most = sum;
                best = lag;
            }
        }
        return new CoarseSearch.Match(
                best * hop, stretch, most / Math.max(1, wanted.sounding(0, wanted.hops())));
    }
}
