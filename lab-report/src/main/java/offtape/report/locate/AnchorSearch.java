package offtape.report.locate;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;

/**
 * Finds one short stretch of the programme in the recording by matched filter, near the place where
 * it is expected, trying a few speeds since wow may have stretched it.
 */
final class AnchorSearch {

    private static final double REACH_S = 0.15;
    private static final double WOW = 0.004;
    private static final int FINER = 6;

    /** Sample rate of the first look at many speeds, over the highest frequency sought. */
    private static final double ROOM = 2.2;

    /** So many of the speeds that look best are looked at closely. */
    private static final int CLOSER = 4;

    private final AudioSource programme;
    private final AudioSource recording;
    private final TimeMap map;

    AnchorSearch(AudioSource programme, AudioSource recording, TimeMap map) {
        this.programme = programme;
        this.recording = recording;
        this.map = map;
    }

    /**
     * Looks for a stretch of the programme.
     *
     * @param from start in the programme, seconds
     * @param seconds length
     * @param topHz highest frequency it holds, which sets how finely speed is tried; 0 if only the
     *     speed of the map is to be tried, as for part of an exponential sweep, in which an error
     *     of speed looks exactly like one of place
     * @return the middle of the stretch, or nothing if the recording does not cover the place
     */
    Optional<Anchor> find(double from, double seconds, double topHz) {
        return seek(from, seconds, topHz, Double.POSITIVE_INFINITY);
    }

    /**
     * Whether a stretch of the programme is heard where the map has it.
     *
     * @param likeness the least correlation coefficient at which it is
     */
    boolean hears(double from, double seconds, double topHz, double likeness) {
        return seek(from, seconds, topHz, likeness)
                .filter(a -> a.likeness() >= likeness)
                .isPresent();
    }

    /** Looks until the place is known as well as it can be, or until it is like enough. */
    private Optional<Anchor> seek(double from, double seconds, double topHz, double enough) {
        int rate = recording.sampleRateHz();
        double middle = from + seconds / 2;
        double expected = map.recordingSeconds(middle);
        double stretch = 1 / map.speedRatio(middle);
        double reach = seconds * stretch / 2 * (1 + WOW) + REACH_S;
        long start = Math.round((expected - reach) * rate);
        int length = (int) Math.ceil(2 * reach * rate);
        if (start < -REACH_S * rate || start + length > recording.frames() + REACH_S * rate) {
            return Optional.empty();
        }
        HeardSpan heard = HeardSpan.of(recording.read(start, length));
        SoughtSpan span = SoughtSpan.of(programme, from, seconds);
        HeardSpan.Peak best = heard.anywhere(span.template(span.exact(), stretch, rate), stretch);
        if (topHz > 0 && best.likeness() < enough) {
            best = sharpened(best, heard, span, topHz);
        }
        double at = (start + best.place()) / rate;
        return Optional.of(new Anchor(middle, at, best.signs(), best.likeness()));
    }

    private HeardSpan.Peak sharpened(
            HeardSpan.Peak known, HeardSpan heard, SoughtSpan span, double topHz) {
        double step = Math.max(2e-5, 0.2 / (span.seconds() * topHz));
        int steps = (int) Math.min(60, Math.ceil(WOW / step));
        FineTable table = FineTable.of(span.mono());
        HeardSpan.Peak best = known;
        for (HeardSpan.Glance g :
                glances(heard, span, table, known.stretch(), topHz, step, steps)) {
            best = better(best, heard, span, table::at, g.stretch(), g.place());
        }
        best = around(best, heard, span, table::at, step, 1);
        return around(best, heard, span, span.exact(), step / FINER, FINER);
    }

    /** The speeds that look best on thinned sound, which holds all that is sought. */
    private List<HeardSpan.Glance> glances(
            HeardSpan heard,
            SoughtSpan span,
            FineTable table,
            double stretch,
            double topHz,
            double step,
            int steps) {
        int rate = recording.sampleRateHz();
        int thinning = Integer.highestOneBit(Math.max(1, (int) (rate * stretch / (ROOM * topHz))));
        HeardSpan.Thinned thinned = heard.thinned(thinning);
        int half = (steps + 1) / 2;
        return IntStream.rangeClosed(-half, half)
                .mapToDouble(i -> stretch * (1 + 2 * i * step))
                .mapToObj(
                        tried ->
                                thinned.glance(
                                        span.template(table::at, tried, (double) rate / thinning),
                                        tried))
                .sorted(Comparator.comparingDouble(HeardSpan.Glance::score).reversed())
                .limit(CLOSER)
                .toList();
    }

    private HeardSpan.Peak around(
            HeardSpan.Peak known,
            HeardSpan heard,
            SoughtSpan span,
            DoubleUnaryOperator at,
            double step,
            int steps) {
        HeardSpan.Peak best = known;
        for (int i = -steps; i <= steps; i++) {
            double tried = known.stretch() * (1 + i * step);
            best = better(best, heard, span, at, tried, known.place());
        }
        return best;
    }

    private HeardSpan.Peak better(
            HeardSpan.Peak best,
            HeardSpan heard,
            SoughtSpan span,
            DoubleUnaryOperator at,
            double tried,
            double place) {
        double[] template = span.template(at, tried, recording.sampleRateHz());
        HeardSpan.Peak peak = heard.near(template, place, tried);
        return peak.score() > best.score() ? peak : best;
    }
}
