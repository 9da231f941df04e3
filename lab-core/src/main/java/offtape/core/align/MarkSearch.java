package offtape.core.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.AnalyticCorrelation;
import offtape.core.dsp.Spectrum;

/**
 * Finds an alignment mark: coarsely by matched filters for both glides, piece by piece, so that the
 * length of the stretch costs no memory, and then sharply with {@link MarkSight}.
 */
final class MarkSearch {

    /** Which share of a stretch's energy a glide explains at least. */
    private static final double LEAST_LIKENESS = 0.2;

    /** Sounds that are this much weaker in power than the clearest are echoes or leaks of it. */
    private static final double ECHO = 0.1;

    /** How far the speed may be off, as a share. */
    private static final double MOST_OFF = 0.03;

    /** Nothing is looked for in what is as good as digital silence; full scale squared a frame. */
    private static final double SILENCE = 1e-18;

    private static final int PIECE = 1 << 18;

    private final AlignmentMark mark;
    private final Glide rising;
    private final Glide falling;
    private final int slack;
    private final MarkSight sight;

    /** One half of the mark and its energy. */
    private record Glide(double[] samples, double energy) {

        static Glide of(double[] mark, int from, int to) {
            double[] x = Arrays.copyOfRange(mark, from, to);
            return new Glide(x, Arrays.stream(x).map(v -> v * v).sum());
        }

        int length() {
            return samples.length;
        }
    }

    /** A place at which both glides seem to lie. */
    private record Candidate(long frame, double power) {}

    /** A search for marks sent at a sample rate. */
    MarkSearch(int sampleRateHz) {
        this.mark = new AlignmentMark(sampleRateHz);
        double[] whole = mark.samples();
        int middle = (int) Math.round(mark.middle());
        this.rising = Glide.of(whole, 0, middle);
        this.falling = Glide.of(whole, middle, whole.length);
        this.slack = (int) Math.ceil(MOST_OFF * mark.parting() * sampleRateHz) + 2;
        this.sight = new MarkSight(mark, sampleRateHz);
    }

    /**
     * The first mark that lies wholly within a stretch of one channel.
     *
     * @param peak highest magnitude of the mark that was sent
     * @return empty if nothing there is alike enough
     */
    Optional<FoundMark> find(
            AudioSource recording, int channel, long fromFrame, long toFrame, double peak) {
        List<Candidate> all = new ArrayList<>();
        // room for glides that wrong speed moves apart, also about a mark at either end
        long begin = fromFrame - slack;
        long end = toFrame + slack;
        int shortest = mark.frames() + 2 * slack;
        for (long at = begin; at + shortest <= end; at += PIECE - shortest) {
            int length = (int) Math.min(PIECE, end - at);
            best(recording.read(at, length)[channel], at).ifPresent(all::add);
        }
        double most = all.stream().mapToDouble(Candidate::power).max().orElse(0);
        return all.stream()
                .filter(c -> c.power() >= ECHO * most)
                .findFirst()
                .map(c -> sight.at(recording, channel, c.frame() + mark.middle(), peak))
                .filter(m -> m.likeness() >= LEAST_LIKENESS);
    }

    /** Whether a path turned a mark over, from both marks that were sent through it. */
    boolean isInverted(AudioSource recording, int channel, double rate, FoundMark... marks) {
        return Arrays.stream(marks)
                        .mapToDouble(m -> sight.lowSum(recording, channel, m.frame(), rate))
                        .sum()
                < 0;
    }

    /** The first place in a piece that is not much weaker than the strongest. */
    private Optional<Candidate> best(double[] x, long at) {
        Spectrum spectrum = AnalyticCorrelation.spectrum(x);
        AnalyticCorrelation up = correlation(spectrum, x.length, rising);
        AnalyticCorrelation down = correlation(spectrum, x.length, falling);
        Energy energy = new Energy(x);
        List<Candidate> peaks = new ArrayList<>();
        int last = x.length - rising.length() - falling.length() - slack;
        for (int k = slack; k <= last; k++) {
            if (isPeak(up, k) && likeness(up, k, rising, energy) >= LEAST_LIKENESS) {
                int other = strongest(down, k + rising.length());
                if (likeness(down, other, falling, energy) >= LEAST_LIKENESS) {
                    // wrong speed moves the glides apart to either side of the middle
                    int middle = (k + rising.length() + other) / 2;
                    peaks.add(
                            new Candidate(
                                    at + middle - rising.length(),
                                    up.power(k) + down.power(other)));
                }
            }
        }
        double most = peaks.stream().mapToDouble(Candidate::power).max().orElse(0);
        return peaks.stream()
                .filter(c -> c.power() >= ECHO * most)
                .findFirst()
                .map(c -> strongestNear(peaks, c));
    }

    // what an echo's limit lets in may be the flank of the true peak
    private Candidate strongestNear(List<Candidate> peaks, Candidate first) {
        return peaks.stream()
                .filter(c -> Math.abs(c.frame() - first.frame()) < rising.length())
                .reduce(first, (a, b) -> b.power() > a.power() ? b : a);
    }

    private static AnalyticCorrelation correlation(Spectrum x, int length, Glide glide) {
        return AnalyticCorrelation.ofAll(List.of(x), length, glide.samples()).get(0);
    }

    private static boolean isPeak(AnalyticCorrelation c, int k) {
        double here = c.power(k);
        return here >= c.power(k - 1) && here > c.power(k + 1);
    }

    private int strongest(AnalyticCorrelation c, int near) {
        int best = near;
        for (int k = near - slack; k <= near + slack; k++) {
            best = c.power(k) > c.power(best) ? k : best;
        }
        return best;
    }

    private static double likeness(AnalyticCorrelation c, int k, Glide glide, Energy energy) {
        double there = energy.between(k, k + glide.length());
        return there < SILENCE * glide.length() ? 0 : c.power(k) / (glide.energy() * there);
    }

    /** Running sums of squares. */
    private static final class Energy {

        private final double[] sums;

        Energy(double[] x) {
            sums = new double[x.length + 1];
            for (int i = 0; i < x.length; i++) {
                sums[i + 1] = sums[i] + x[i] * x[i];
            }
        }

        double between(int from, int to) {
            return sums[to] - sums[from];
        }
    }
}
