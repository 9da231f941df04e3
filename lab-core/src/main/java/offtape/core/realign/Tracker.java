package offtape.core.realign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;

/**
 * Follows a return along its original: roughly by {@link LagPath}, and then again and again with
 * the return put straight by what was found before, until nothing moves any more. Each round reads
 * the path's response and noise anew, delays each window by maximum likelihood ({@link
 * DelaySight}), and draws the likeliest course through them ({@link Smoother}).
 */
final class Tracker {

    /** How far each round looks, seconds; the last value holds for all that follow. */
    private static final double[] REACH_S = {3e-4, 1.5e-4, 8e-5};

    /**
     * How wide each round smooths the response: widely at first, or a note that has its bins to
     * itself would take its own error for the path's; the last value holds for all that follow.
     */
    private static final double[] WIDTHS = {0.4, 0.4, 0.25, 0.15, 0.1};

    private static final int MOST_ROUNDS = 8;

    /** When the course moves by less than this between rounds it is found, frames rms. */
    private static final double SETTLED = 0.001;

    /** A course that swings by less may be a line, which is tried first; seconds rms. */
    private static final double STEADY_S = 1e-4;

    private static final int LINE_ROUNDS = 3;

    /** From this round on lines of wow are looked for. */
    private static final int SEARCHED_ROUND = 3;

    /** The course is drawn at least so often where nothing sounds, seconds. */
    private static final double BRIDGE_S = 0.06;

    /** Beyond this nothing is drawn, seconds. */
    private static final double LONGEST_GAP_S = 30;

    /** In so many rounds each window's response is taken at the window's own delay. */
    private static final int ROUGH_ROUNDS = 2;

    /** Least variance of a delay, frames squared: rounding and interpolation. */
    private static final double LEAST_VARIANCE = 4e-6;

    /** Windows of the first look, long against a period of the lowest tones. */
    private static final double LONG_S = 0.085;

    /** Windows of all others, short against the period of wow. */
    static final double SHORT_S = 0.043;

    private final Windows longer;
    private final Windows windows;
    private final List<Stretch> stretches;

    Tracker(AudioSource original, AudioSource returned, List<Stretch> stretches) {
        this.longer = new Windows(original, returned, LONG_S);
        this.windows = new Windows(original, returned, SHORT_S);
        this.stretches = stretches;
    }

    /** What a round leaves to the next. */
    private record Round(Drawn drawn, List<Transfer> path, PhaseSlope slope, int count) {}

    /** Where windows lie, and the likeliest course through their delays. */
    private record Drawn(Course course, double[] frames, Smoothed curve) {}

    /**
     * How much of the return the original explains along a course, its delays set as well as can
     * be: the mean of −ln(1 − coherence) over the frequencies.
     */
    double likeness(Course rough) {
        List<LocalDelay> first = roughDelays(rough);
        if (first.size() < 3) {
            return 0;
        }
        Drawn drawn = drawn(rough, first, false, false);
        Round start = new Round(drawn, path(drawn.course()), null, 0);
        Round round = next(start, 0, false);
        if (round == null) {
            return 0;
        }
        double sum = 0;
        int count = 0;
        for (Transfer t : path(round.drawn().course())) {
            for (double c : t.coherence()) {
                sum -= Math.log(Math.max(1e-9, 1 - c));
                count++;
            }
        }
        return sum / count;
    }

    /** Follows it from a course that is right within some hundredths of a second; null if lost. */
    Tracked follow(Course rough) {
        List<LocalDelay> first = roughDelays(rough);
        if (first.size() < 3) {
            return null;
        }
        Drawn drawn = drawn(rough, first, false, false);
        boolean isSteady = swing(drawn) < STEADY_S * windows.sampleRateHz();
        Round round = new Round(drawn, path(drawn.course()), null, 0);
        for (int n = 0; n < LINE_ROUNDS && isSteady && round != null; n++) {
            round = next(round, n, true);
        }
        for (int n = 0; n < MOST_ROUNDS && round != null; n++) {
            Course before = round.drawn().course();
            round = next(round, n, false);
            boolean isLine = round != null && isSteady && round.drawn().curve().isLine();
            if (round != null
                    && (isLine || n >= WIDTHS.length - 1)
                    && moved(before, round.drawn()) < SETTLED) {
                break;
            }
        }
        return round == null ? null : tracked(round);
    }

    private Tracked tracked(Round round) {
        Drawn drawn = round.drawn();
        StraightLine line =
                StraightLine.of(
                        drawn.course(), drawn.frames(), drawn.curve(), windows.sampleRateHz());
        return new Tracked(
                drawn.course(), drawn.frames(), drawn.curve(), line, round.slope(), round.path());
    }

    private Round next(Round last, int number, boolean isLine) {
        double reach = REACH_S[Math.min(number, REACH_S.length - 1)] * windows.sampleRateHz();
        List<LocalDelay> delays = new ArrayList<>();
        List<Tally> tallies = tallies(number + 1);
        Course along = last.drawn().course();
        boolean isRough = !isLine && number < ROUGH_ROUNDS;
        look(along, new DelaySight(windows, last.path(), reach), delays, tallies, isRough);
        if (delays.size() < 3) {
            return null;
        }
        Drawn drawn = drawn(along, delays, isLine, number >= SEARCHED_ROUND);
        double shift = isRough ? 0 : shift(along, drawn);
        List<Transfer> path =
                tallies.stream().map(t -> t.transfer().earlier(shift, windows)).toList();
        PhaseSlope slope = PhaseSlope.of(windows, path, delays.size());
        double late = slope.late();
        List<Transfer> straight = path.stream().map(t -> t.earlier(late, windows)).toList();
        Drawn moved = new Drawn(drawn.course().later(late), drawn.frames(), drawn.curve());
        return new Round(moved, straight, slope, delays.size());
    }

    /** How far the course swings beside a straight line, frames rms. */
    private static double swing(Drawn drawn) {
        double[] values = drawn.curve().values();
        double[] alike = new double[values.length];
        Arrays.fill(alike, 1);
        WeightedLine line = WeightedLine.through(drawn.frames(), values, alike);
        double sum = 0;
        for (int k = 0; k < values.length; k++) {
            double off = values[k] - line.at(drawn.frames()[k]);
            sum += off * off;
        }
        return Math.sqrt(sum / values.length);
    }

    private List<LocalDelay> roughDelays(Course rough) {
        List<LocalDelay> all = new ArrayList<>();
        for (Stretch stretch : stretches) {
            LagPath lags = new LagPath(longer);
            longer.each(stretch, rough, lags::add);
            all.addAll(lags.delays());
        }
        return all;
    }

    private List<Tally> tallies(int round) {
        double width = WIDTHS[Math.min(round, WIDTHS.length - 1)];
        return IntStream.range(0, windows.channels())
                .mapToObj(c -> new Tally(windows.bins(), width))
                .toList();
    }

    private List<Transfer> path(Course course) {
        List<Tally> tallies = tallies(0);
        for (Stretch stretch : stretches) {
            windows.each(stretch, course, pair -> add(tallies, pair, 0));
        }
        return tallies.stream().map(Tally::transfer).toList();
    }

    private void look(
            Course course,
            DelaySight sight,
            List<LocalDelay> delays,
            List<Tally> tallies,
            boolean isRough) {
        for (Stretch stretch : stretches) {
            windows.each(
                    stretch,
                    course,
                    sight::at,
                    (pair, delay) -> {
                        if (delay != null) {
                            delays.add(delay);
                        }
                        // later a window's own delay is mostly noise, and would hide the path's
                        add(tallies, pair, delay == null || !isRough ? 0 : delay.late());
                    });
        }
    }

    private void add(List<Tally> tallies, Windows.Pair pair, double late) {
        for (int c = 0; c < tallies.size(); c++) {
            tallies.get(c).add(windows, pair.original().get(c), pair.returned().get(c), late);
        }
    }

    /** The delays in order, and between those far apart moments at which nothing was read. */
    private List<LocalDelay> bridged(List<LocalDelay> delays) {
        List<LocalDelay> sorted = new ArrayList<>(delays);
        sorted.sort(Comparator.comparingDouble(LocalDelay::frame));
        List<LocalDelay> all = new ArrayList<>();
        for (LocalDelay delay : sorted) {
            double last = all.isEmpty() ? delay.frame() : all.get(all.size() - 1).frame();
            double gap = delay.frame() - last;
            if (gap < LONGEST_GAP_S * windows.sampleRateHz()) {
                for (int n = 1; n * BRIDGE_S * windows.sampleRateHz() < gap; n++) {
                    double frame = last + n * BRIDGE_S * windows.sampleRateHz();
                    all.add(new LocalDelay(frame, 0, Double.POSITIVE_INFINITY));
                }
            }
            all.add(delay);
        }
        return all;
    }

    private Drawn drawn(Course along, List<LocalDelay> delays, boolean isLine, boolean isSearched) {
        List<LocalDelay> all = bridged(delays);
        double[] frames = all.stream().mapToDouble(LocalDelay::frame).toArray();
        double[] values = new double[frames.length];
        double[] variances = new double[frames.length];
        for (int k = 0; k < frames.length; k++) {
            double line = along.start() + along.step() * frames[k];
            values[k] = along.at(frames[k]) - line + along.step() * all.get(k).late();
            variances[k] = Math.max(LEAST_VARIANCE, all.get(k).variance());
        }
        Smoother smoother = new Smoother(frames, values, variances, windows.sampleRateHz());
        Smoothed curve = isLine ? smoother.line() : smoother.likeliest(isSearched);
        Course course =
                new Course(along.start(), along.step(), frames, curve.values(), curve.slopes());
        return new Drawn(course, frames, curve);
    }

    /** By how much the course moved on the whole, frames. */
    private static double shift(Course before, Drawn now) {
        double sum = 0;
        for (double frame : now.frames()) {
            sum += now.course().at(frame) - before.at(frame);
        }
        return sum / now.frames().length;
    }

    private static double moved(Course before, Drawn now) {
        double sum = 0;
        for (double frame : now.frames()) {
            double by = now.course().at(frame) - before.at(frame);
            sum += by * by;
        }
        return Math.sqrt(sum / now.frames().length);
    }
}
