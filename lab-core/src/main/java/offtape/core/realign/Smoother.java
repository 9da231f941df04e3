package offtape.core.realign;

import java.util.List;
import java.util.stream.Stream;

/**
 * Draws the likeliest course of time through delays of unlike worth. Without lines of wow that is a
 * cubic smoothing spline. How much the speed wanders, and how much the delays scatter beside their
 * own doubt, is what makes them likeliest; a straight line is kept unless wandering explains the
 * delays clearly better, and a line of wow is believed only if it does, so that a steady path stays
 * one. Delays far off the curve lose weight.
 *
 * <p>Source: G. Wahba, Spline Models for Observational Data, SIAM 1990, for splines as estimates of
 * an integrated random walk (from memory).
 */
final class Smoother {

    /** Wander of the speed that is tried: none, and steps of half a decade from here, a second. */
    private static final double SLOWEST = 1e-17;

    private static final double RATIO = Math.sqrt(10);
    private static final int STEPS = 28;

    /** Scatter of all delays beside their own doubt that is tried, frames squared. */
    private static final double[] SCATTERS = {0, 1e-4, 1e-3, 1e-2, 0.1, 1, 10};

    /** Beyond so many standard deviations a delay loses weight. */
    private static final double FAR = 3;

    /** By how much a line of wow makes the delays likelier, natural logarithm. */
    private static final double LEAST_GAIN = 8;

    private static final int ROUNDS = 2;

    /** How long lines are tried to keep their phase, seconds. */
    private static final double[] MEMORIES_S = {30, 1e3, 3e4, 1e6};

    private final double[] times;
    private final double[] values;
    private final double[] given;
    private final double[] variances;
    private final WeightedLine base;
    private final double rate;

    /**
     * Delays in the order of time.
     *
     * @param times frames
     * @param values frames
     * @param variances frames squared, above 0
     * @param sampleRateHz frames a second
     */
    Smoother(double[] times, double[] values, double[] variances, double sampleRateHz) {
        this.times = times;
        this.rate = sampleRateHz;
        this.base = WeightedLine.through(times, values, variances);
        this.values = new double[values.length];
        for (int k = 0; k < values.length; k++) {
            this.values[k] = values[k] - base.at(times[k]);
        }
        this.given = variances;
        this.variances = variances.clone();
    }

    /** How the delays came about, in steps of what is tried. */
    private record Guess(int wander, int scatter, double likelihood) {}

    /**
     * The likeliest curve.
     *
     * @param isSearched whether lines of wow are looked for
     */
    Smoothed likeliest(boolean isSearched) {
        List<WowLine> lines = List.of();
        Guess guess = climbed(everywhere(lines), lines);
        weighDown(guess, lines);
        if (isSearched && guess.wander() > 0) {
            double[] wide = widened(guess.scatter());
            for (WowLine line : new WowLines(times, values, wide, rate).find()) {
                Guess least = climbed(guess, lines);
                double best = least.likelihood() + LEAST_GAIN;
                List<WowLine> before = lines;
                for (double memory : MEMORIES_S) {
                    List<WowLine> more = with(before, line.lasting(memory * rate));
                    Guess with = climbed(everywhere(more), more);
                    if (with.likelihood() > best) {
                        best = with.likelihood();
                        lines = more;
                        guess = with;
                    }
                }
            }
        }
        for (int round = 0; round < ROUNDS; round++) {
            guess = climbed(guess, lines);
            weighDown(guess, lines);
        }
        return smooth(guess, lines).beside(base, times);
    }

    /** The straight line. */
    Smoothed line() {
        return smooth(new Guess(0, 0, 0), List.of()).beside(base, times);
    }

    private static List<WowLine> with(List<WowLine> lines, WowLine line) {
        return Stream.concat(lines.stream(), Stream.of(line)).toList();
    }

    private Guess everywhere(List<WowLine> lines) {
        Guess best = guess(0, 0, lines);
        for (int q = 2; q < STEPS; q += 4) {
            for (int s = 0; s < SCATTERS.length; s += 2) {
                Guess here = guess(q, s, lines);
                best = here.likelihood() > best.likelihood() ? here : best;
            }
        }
        return best;
    }

    private Guess climbed(Guess from, List<WowLine> lines) {
        Guess best = guess(from.wander(), from.scatter(), lines);
        Guess line = guess(0, from.scatter(), lines);
        best = line.likelihood() > best.likelihood() ? line : best;
        boolean isMoving = true;
        while (isMoving) {
            isMoving = false;
            for (int k = 0; k < 4; k++) {
                int q = best.wander() + (k < 2 ? 2 * k - 1 : 0);
                int s = best.scatter() + (k < 2 ? 0 : 2 * k - 5);
                if (q >= 0 && q < STEPS && s >= 0 && s < SCATTERS.length) {
                    Guess here = guess(q, s, lines);
                    isMoving |= here.likelihood() > best.likelihood();
                    best = here.likelihood() > best.likelihood() ? here : best;
                }
            }
        }
        return best;
    }

    private Guess guess(int wander, int scatter, List<WowLine> lines) {
        double found =
                wander == 0 && lines.isEmpty()
                        ? lineLikelihood(widened(scatter))
                        : filter(wander, scatter, lines).run().likelihood();
        // rounding may leave a variance below nothing where all is nearly certain
        double likelihood = Double.isNaN(found) ? Double.NEGATIVE_INFINITY : found;
        double trust = wander == 0 ? 2 + 0.5 * Math.log(times.length + 1.0) : 0;
        return new Guess(wander, scatter, likelihood + trust);
    }

    /** What the filter would say of a line, in closed form, where rounding does no harm. */
    private double lineLikelihood(double[] wide) {
        WeightedLine line = WeightedLine.through(times, values, wide);
        double logs = -Math.log(line.valueVariance()) - Math.log(line.slopeVariance());
        double squares = 0;
        int n = 0;
        double first = Double.NaN;
        for (int k = 0; k < times.length; k++) {
            if (Double.isFinite(wide[k])) {
                double off = values[k] - line.at(times[k]);
                logs += Math.log(wide[k]);
                squares += off * off / wide[k];
                if (n == 1) {
                    logs -= 2 * Math.log(times[k] - first);
                }
                first = n == 0 ? times[k] : first;
                n++;
            }
        }
        int free = Math.max(1, n - 2);
        double scale = Math.max(1, squares / free);
        return -0.5 * (logs + free * Math.log(scale) + squares / scale);
    }

    private CourseFilter filter(int wander, int scatter, List<WowLine> lines) {
        return new CourseFilter(times, values, widened(scatter), wander(wander), lines);
    }

    private double wander(int step) {
        return step == 0 ? 0 : SLOWEST * Math.pow(RATIO, step) / rate;
    }

    private double[] widened(int scatter) {
        double[] wide = variances.clone();
        for (int k = 0; k < wide.length; k++) {
            wide[k] += SCATTERS[scatter];
        }
        return wide;
    }

    private Smoothed smooth(Guess guess, List<WowLine> lines) {
        if (guess.wander() > 0 || !lines.isEmpty()) {
            return filter(guess.wander(), guess.scatter(), lines).smooth();
        }
        double[] wide = widened(guess.scatter());
        CourseFilter filter = filter(0, guess.scatter(), lines).run();
        WeightedLine line = WeightedLine.through(times, values, wide);
        int n = times.length;
        double[] late = new double[n];
        double[] slopes = new double[n];
        double[] doubts = new double[n];
        for (int k = 0; k < n; k++) {
            late[k] = line.at(times[k]);
            slopes[k] = line.slope();
            doubts[k] = filter.scale() * line.variance(times[k]);
        }
        return new Smoothed(
                late, slopes, doubts, 0, filter.scale(), filter.likelihood(), List.of());
    }

    private void weighDown(Guess guess, List<WowLine> lines) {
        Smoothed curve = smooth(guess, lines);
        double scatter = SCATTERS[guess.scatter()];
        for (int k = 0; k < times.length; k++) {
            double off = values[k] - curve.values()[k];
            if (Double.isInfinite(given[k])) {
                continue;
            }
            double wide = given[k] + scatter;
            double far = off * off / (FAR * FAR * curve.scale() * wide);
            variances[k] = wide * Math.max(1, far) - scatter;
        }
    }
}
