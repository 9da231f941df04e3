package offtape.report.locate;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.fault.Background;

/** Sharpens a match that is known to some tenths of a second and some tenths of a percent. */
final class FineSearch {

    private static final double WIDE_STEP = 0.003;
    private static final int WIDE_STEPS = 14;
    private static final double STEP = 0.0005;
    private static final int STEPS = 6;
    private static final double WIDE_REACH_S = 0.4;
    private static final double REACH_S = 0.12;

    /** Drift bends the course of time away from a straight match by less than this, seconds. */
    private static final double BENT_S = 1.5;

    /** The wide search looks at so many moments of the programme, evenly spread. */
    private static final int WIDE_MOMENTS = 1200;

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
        CoarseSearch.Match match =
                among(rough, WIDE_STEP, WIDE_STEPS, everyForWide(), WIDE_REACH_S);
        return among(match, STEP, STEPS, 1, REACH_S);
    }

    /**
     * The same match at a speed that is known better. Of a programme that is mostly one long tone
     * nothing but an end may have been in its place, so what the speeds differ over half of the
     * length is searched.
     */
    CoarseSearch.Match at(CoarseSearch.Match known, double stretch) {
        double middle = middleSeconds(known);
        double inProgramme = (middle - known.offsetSeconds()) / known.stretch();
        double half = programme.hops() * programme.hopSeconds() / 2;
        double reach = WIDE_REACH_S + Math.abs(stretch - known.stretch()) * half;
        CoarseSearch.Match near =
                at(stretch, middle - stretch * inProgramme, everyForWide(), reach);
        return at(stretch, near.offsetSeconds(), 1, WIDE_REACH_S);
    }

    private int everyForWide() {
        return Math.max(1, programme.hops() / WIDE_MOMENTS);
    }

    /**
     * How much later the recording is than a map of its time says. Where the speed drifts, a
     * straight match lies right at the ends of a long tone and wrong inside it.
     *
     * @param map where each moment of the programme should lie
     * @param stretch of the whole, to lower the pitch by
     * @return seconds, whole steps of the traces, 0 if no place is better
     */
    double lateSeconds(TimeMap map, double stretch) {
        SpectralTrace wanted = programme.stretched(stretch);
        double hop = programme.hopSeconds();
        int every = everyForWide();
        int reach = (int) Math.ceil(BENT_S / hop);
        double[] like = new double[2 * reach + 1];
        for (int h = 0; h < wanted.hops(); h += every) {
            int at = (int) Math.rint(map.recordingSeconds(h * hop / stretch) / hop);
            for (int lag = -reach; lag <= reach; lag++) {
                like[lag + reach] += wanted.likeness(h, recording, at + lag);
            }
        }
        int best = reach;
        for (int i = 0; i < like.length; i++) {
            best = like[i] > like[best] ? i : best;
        }
        return (best - reach) * hop;
    }

    private CoarseSearch.Match among(
            CoarseSearch.Match rough, double step, int steps, int every, double reachSeconds) {
        double middle = middleSeconds(rough);
        double inProgramme = (middle - rough.offsetSeconds()) / rough.stretch();
        List<Double> stretches =
                IntStream.rangeClosed(-steps, steps)
                        .mapToObj(i -> rough.stretch() * (1 + i * step))
                        .toList();
        return Background.each(
                        stretches,
                        stretch -> at(stretch, middle - stretch * inProgramme, every, reachSeconds))
                .stream()
                .max(Comparator.comparingDouble(CoarseSearch.Match::likeness))
                .orElseThrow();
    }

    /** Middle of what the recording holds of the programme, seconds of the recording. */
    private double middleSeconds(CoarseSearch.Match match) {
        double hop = programme.hopSeconds();
        double from = Math.max(0, match.offsetSeconds());
        double length = programme.hops() * hop * match.stretch();
        double to = Math.min(recording.hops() * hop, match.offsetSeconds() + length);
        return (from + to) / 2;
    }

    private CoarseSearch.Match at(
            double stretch, double expectedSeconds, int every, double reachSeconds) {
        SpectralTrace wanted = programme.stretched(stretch);
        double hop = programme.hopSeconds();
        int expected = (int) Math.rint(expectedSeconds / hop);
        int reach = (int) Math.ceil(reachSeconds / hop);
        double most = -1;
        int best = expected;
        for (int lag = expected - reach; lag <= expected + reach; lag++) {
            double sum = 0;
            for (int h = 0; h < wanted.hops(); h += every) {
                sum += wanted.likeness(h, recording, h + lag);
            }
            if (sum > most) {
                most = sum;
                best = lag;
            }
        }
        int sounding = Math.max(1, wanted.sounding(0, wanted.hops()));
        return new CoarseSearch.Match(best * hop, stretch, every * most / sounding);
    }
}
