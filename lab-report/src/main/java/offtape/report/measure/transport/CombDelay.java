package offtape.report.measure.transport;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.report.measure.speed.HeardDeviation;

/**
 * The time between the heads as the return itself shows it: random motion of the tape is missing at
 * the multiples of 1/τ.
 *
 * @param seconds τ
 * @param sigmaSeconds its standard uncertainty
 */
record CombDelay(double seconds, double sigmaSeconds) {

    /** Shortest and longest time that the tape takes between two heads. */
    static final double SHORTEST_S = 0.005;

    static final double LONGEST_S = 1.5;

    /** Rates that are looked at for a first guess. */
    private static final double COARSE_HZ = 60;

    /** Steps of a first guess, in turns of the highest rate. */
    private static final double COARSE_TURNS = 0.12;

    private static final int CANDIDATES = 6;
    private static final double FINE_S = 1e-4;

    /**
     * A comb counts as shown if its likelihood exceeds that of none, and of every other delay, by
     * this logarithm: e^12 is one in 160 000, for some thousand delays that are tried.
     */
    private static final double SHOWN = 12;

    private static final int LOUDEST = 2;

    private static final int MOST_STEPS = 12;

    /** Delays so close to the best belong to it. */
    private static final double SAME_S = 0.002;

    private static final double SAME_SHARE = 0.02;

    private record Guess(double seconds, double logLikelihood) {}

    /**
     * Looks for the comb.
     *
     * @param longestSeconds longest delay that is possible
     * @return empty if the return does not show it clearly
     */
    static Optional<CombDelay> find(HeardDeviation heard, double longestSeconds) {
        double longest = Math.min(Math.min(LONGEST_S, longestSeconds), heard.seconds() / 8);
        if (longest <= SHORTEST_S) {
            return Optional.empty();
        }
        CombSpectrum spectrum = new CombSpectrum(heard);
        if (spectrum.blocks() < 3) {
            return Optional.empty();
        }
        List<Guess> best = fine(spectrum, heard.bandHz(), coarse(spectrum, longest));
        double top = best.get(0).seconds();
        double above = evidence(spectrum, top, 0);
        for (Guess g : best) {
            if (!isSame(g.seconds(), top)) {
                above = Math.min(above, evidence(spectrum, top, g.seconds()));
            }
        }
        return above / spectrum.dispersion(top) < SHOWN ? Optional.empty() : settled(spectrum, top);
    }

    /**
     * How much likelier one delay is than another, or than none, as a logarithm. The two blocks
     * that speak loudest do not count: an edge of the spectrum can look like one zero of a comb,
     * but not like several.
     */
    private static double evidence(CombSpectrum spectrum, double seconds, double than) {
        double[] parts = new double[spectrum.blocks()];
        for (int b = 0; b < parts.length; b++) {
            parts[b] =
                    spectrum.blockLogLikelihood(b, seconds) - spectrum.blockLogLikelihood(b, than);
        }
        Arrays.sort(parts);
        double sum = Arrays.stream(parts, 0, parts.length - LOUDEST).sum();
        return sum / CombSpectrum.CORRELATION;
    }

    private static boolean isSame(double seconds, double top) {
        return Math.abs(seconds - top) < Math.max(SAME_S, SAME_SHARE * top);
    }

    /** The likeliest of all delays by the slow rates, no two of them the same. */
    private static List<Guess> coarse(CombSpectrum spectrum, double longest) {
        List<Guess> guesses = new ArrayList<>();
        for (double s = SHORTEST_S; s < longest; s += COARSE_TURNS / COARSE_HZ) {
            guesses.add(new Guess(s, spectrum.logLikelihood(s, COARSE_HZ)));
        }
        guesses.sort(Comparator.comparingDouble(g -> -g.logLikelihood()));
        List<Guess> apart = new ArrayList<>();
        for (Guess g : guesses) {
            if (apart.size() < CANDIDATES
                    && apart.stream().noneMatch(a -> isSame(a.seconds(), g.seconds()))) {
                apart.add(g);
            }
        }
        return apart;
    }

    /** Each with all rates, at the best place near it. */
    private static List<Guess> fine(CombSpectrum spectrum, double toHz, List<Guess> guesses) {
        List<Guess> better = new ArrayList<>();
        double reach = 1.5 * COARSE_TURNS / COARSE_HZ;
        for (Guess g : guesses) {
            Guess best = new Guess(g.seconds(), Double.NEGATIVE_INFINITY);
            for (double s = g.seconds() - reach; s <= g.seconds() + reach; s += FINE_S) {
                Guess here = new Guess(s, spectrum.logLikelihood(s, toHz));
                best = here.logLikelihood() > best.logLikelihood() ? here : best;
            }
            better.add(best);
        }
        better.sort(Comparator.comparingDouble(g -> -g.logLikelihood()));
        return better;
    }

    /**
     * The top of the likelihood. Its uncertainty is the largest of what the likelihood's curvature
     * says, of how far the blocks disagree (the sandwich of P. J. Huber, 1967, from memory), and of
     * how far the top moves without the block that pulls most: motion need not be as even as was
     * assumed.
     */
    private static Optional<CombDelay> settled(CombSpectrum spectrum, double start) {
        Top all = top(spectrum, start, -1);
        if (all == null) {
            return Optional.empty();
        }
        Top without = top(spectrum, all.seconds(), all.strongest());
        return without == null
                ? Optional.empty()
                : Optional.of(
                        new CombDelay(
                                all.seconds(),
                                Math.max(
                                        all.sigmaSeconds(),
                                        Math.abs(without.seconds() - all.seconds()))));
    }

    /**
     * A top of the likelihood.
     *
     * @param strongest the block that pulls most at it
     */
    private record Top(double seconds, double sigmaSeconds, int strongest) {}

    /** The top near a delay by Newton's steps, or null if there is none. */
    private static Top top(CombSpectrum spectrum, double start, int leftOut) {
        double seconds = start;
        double h = FINE_S / 4;
        double curvature = 0;
        double squares = 0;
        int strongest = -1;
        for (int step = 0; step < MOST_STEPS; step++) {
            double slope = 0;
            double most = 0;
            curvature = 0;
            squares = 0;
            for (int b = 0; b < spectrum.blocks(); b++) {
                if (b != leftOut) {
                    double before = spectrum.blockLogLikelihood(b, seconds - h);
                    double here = spectrum.blockLogLikelihood(b, seconds);
                    double after = spectrum.blockLogLikelihood(b, seconds + h);
                    double own = (after - before) / (2 * h);
                    slope += own;
                    squares += own * own;
                    curvature -= (after - 2 * here + before) / (h * h);
                    strongest = Math.abs(own) > most ? b : strongest;
                    most = Math.max(most, Math.abs(own));
                }
            }
            if (!(curvature > 0)) {
                return null;
            }
            seconds += Math.max(-2 * h, Math.min(2 * h, slope / curvature));
        }
        double model = Math.sqrt(CombSpectrum.CORRELATION / curvature);
        double spread = Math.sqrt(squares) / curvature;
        return isSame(seconds, start) ? new Top(seconds, Math.max(model, spread), strongest) : null;
    }
}
