package offtape.core.realign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.align.Alignment;
import offtape.core.align.StraightenedSound;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * A path that delays and changes the level and does nothing else but add noise. Music of few low
 * tones cannot tell its delay from the phase of a response, but it can tell that there is none:
 * what delay and gain leave of the return then has nothing in common with the original.
 *
 * @param lateFrames by how much the return is later than the alignment says, frames of the original
 * @param doubtFrames standard uncertainty of that
 * @param gains of each channel, with their sign
 */
record PlainPath(double lateFrames, double doubtFrames, List<Double> gains) {

    private static final int PIECE = 1 << 14;
    private static final int MOST_PIECES = 48;

    /** How far off an alignment may be, frames. */
    private static final double REACH = 16;

    private static final double STEP = 0.25;
    private static final double NEAR = 1e-9;
    private static final int MOST_STEPS = 200;

    private static final double LOW_HZ = 30;

    /** Interpolation is exact up to this share of the sample rate. */
    private static final double HIGHEST_SHARE = 0.42;

    private static final double BANDS_AN_OCTAVE = 3;

    /** Neighbouring bins of a Hann window are not independent of each other. */
    private static final double ALIKE = 1.5;

    /** No tape comes back so like its original, a share of the power. */
    private static final double NOTHING = 1e-6;

    /** How far above its expectation of 1 the mean of the bands may lie, in its deviations. */
    private static final double CHANCE = 4;

    /** One piece of both, a spectrum a channel. */
    private record Piece(List<Spectrum> sent, List<Spectrum> heard) {}

    /**
     * The path beside an alignment whose gains do not matter, if it is plain.
     *
     * @param isLine whether no wow was seen; where some was, what is left has nothing in common
     *     with the original either, and only a path that leaves next to nothing is plain
     */
    static Optional<PlainPath> beside(
            Alignment near, AudioSource sent, AudioSource returned, boolean isLine) {
        OptionalDouble first = late(near, sent, returned);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        // pieces that begin frames apart differ by what their windows do, so they are cut anew
        double late = first.getAsDouble();
        double start = near.startFrame() + near.step() * late;
        Alignment nearer = new Alignment(start, near.step(), near.gains(), 0, false);
        Sums second = sums(nearer, sent, returned);
        return second.isHeard() ? second.plain(isLine).map(p -> p.laterBy(late)) : Optional.empty();
    }

    /** The delay beside an alignment if anything is heard; the pieces are let go with the call. */
    private static OptionalDouble late(Alignment near, AudioSource sent, AudioSource returned) {
        Sums sums = sums(near, sent, returned);
        return sums.isHeard() ? OptionalDouble.of(sums.late()) : OptionalDouble.empty();
    }

    private PlainPath laterBy(double frames) {
        return new PlainPath(lateFrames + frames, doubtFrames, gains);
    }

    private static Sums sums(Alignment near, AudioSource sent, AudioSource returned) {
        int low = Math.max(1, (int) Math.round(LOW_HZ * PIECE / sent.sampleRateHz()));
        List<Piece> pieces = pieces(near, sent, returned);
        return new Sums(pieces, returned.channels(), low, (int) (HIGHEST_SHARE * PIECE));
    }

    private static List<Piece> pieces(Alignment near, AudioSource sent, AudioSource returned) {
        List<Double> ones = near.gains().stream().map(g -> 1.0).toList();
        Alignment only = new Alignment(near.startFrame(), near.step(), ones, 0, false);
        // closing it would close the return, which is not ours
        StraightenedSound heard = new StraightenedSound(returned, only, 1, sent.frames());
        long room = sent.frames() - PIECE;
        int count = (int) Math.min(MOST_PIECES, 1 + Math.max(-1, room) / PIECE);
        List<Piece> all = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            long from = count == 1 ? 0 : Math.round((double) room * n / (count - 1));
            double first = near.startFrame() + near.step() * from - REACH;
            if (first >= 0 && first + near.step() * PIECE + 2 * REACH < returned.frames()) {
                all.add(
                        new Piece(
                                spectra(sent.read(from, PIECE)), spectra(heard.read(from, PIECE))));
            }
        }
        return all;
    }

    private static List<Spectrum> spectra(double[][] x) {
        List<Spectrum> all = new ArrayList<>();
        for (double[] channel : x) {
            for (int i = 0; i < PIECE; i++) {
                double s = Math.sin(Math.PI * (i + 0.5) / PIECE);
                channel[i] *= s * s;
            }
            all.add(RealFft.ofSize(PIECE).forward(channel));
        }
        return all;
    }

    /** What all pieces together say. */
    private static final class Sums {

        private final List<Piece> pieces;
        private final int channels;
        private final int low;
        private final int high;
        private final double[][] re;
        private final double[][] im;
        private final double[] sentPower;
        private double heardPower;

        Sums(List<Piece> pieces, int channels, int low, int high) {
            this.pieces = pieces;
            this.channels = channels;
            this.low = low;
            this.high = high;
            this.re = new double[channels][high];
            this.im = new double[channels][high];
            this.sentPower = new double[channels];
            pieces.forEach(p -> IntStream.range(0, channels).forEach(c -> add(p, c)));
        }

        private void add(Piece p, int c) {
            Spectrum x = sent(p, c);
            Spectrum y = p.heard().get(c);
            for (int k = low; k < high; k++) {
                re[c][k] += x.re(k) * y.re(k) + x.im(k) * y.im(k);
                im[c][k] += x.re(k) * y.im(k) - x.im(k) * y.re(k);
                sentPower[c] += square(x.re(k), x.im(k));
                heardPower += square(y.re(k), y.im(k));
            }
        }

        boolean isHeard() {
            return heardPower > 0 && DoubleStream.of(sentPower).allMatch(p -> p > 0);
        }

        Optional<PlainPath> plain(boolean isLine) {
            double late = late();
            double[] gains = new double[channels];
            for (int c = 0; c < channels; c++) {
                gains[c] = inPhase(c, late) / sentPower[c];
            }
            Rest rest = new Rest(this, late, gains);
            boolean isPlain = rest.power < NOTHING * heardPower || isLine && rest.isUnlike();
            return isPlain && DoubleStream.of(gains).noneMatch(g -> g == 0)
                    ? Optional.of(
                            new PlainPath(
                                    late, rest.doubt(), DoubleStream.of(gains).boxed().toList()))
                    : Optional.empty();
        }

        /** The delay with which the original explains most of the return. */
        private double late() {
            double best = -REACH;
            for (double d = -REACH; d <= REACH; d += STEP) {
                best = explained(d) > explained(best) ? d : best;
            }
            return new BrentOptimizer(NEAR, NEAR)
                    .optimize(
                            new MaxEval(MOST_STEPS),
                            GoalType.MAXIMIZE,
                            new UnivariateObjectiveFunction(this::explained),
                            new SearchInterval(best - STEP, best + STEP))
                    .getPoint();
        }

        private double explained(double late) {
            double sum = 0;
            for (int c = 0; c < channels; c++) {
                double part = inPhase(c, late);
                sum += part * part / sentPower[c];
            }
            return sum;
        }

        private double inPhase(int c, double late) {
            double sum = 0;
            for (int k = low; k < high; k++) {
                double turn = omega(k) * late;
                sum += re[c][k] * Math.cos(turn) - im[c][k] * Math.sin(turn);
            }
            return sum;
        }
    }

    /** What delay and gain leave of the return. */
    private static final class Rest {

        private final List<Double> likeness = new ArrayList<>();
        private double power;
        private double noise;
        private double told;

        Rest(Sums sums, double late, double[] gains) {
            double ratio = Math.pow(2, 1 / BANDS_AN_OCTAVE);
            for (int c = 0; c < sums.channels; c++) {
                double edge = sums.low;
                while (edge < sums.high) {
                    int to = (int) Math.min(sums.high, Math.ceil(edge * ratio));
                    band(sums, c, (int) Math.ceil(edge), to, late, gains[c]);
                    edge = to;
                }
            }
        }

        private void band(Sums sums, int c, int from, int to, double late, double gain) {
            double re = 0;
            double im = 0;
            double chance = 0;
            for (Piece p : sums.pieces) {
                Spectrum x = sent(p, c);
                Spectrum y = p.heard().get(c);
                for (int k = from; k < to; k++) {
                    double cos = Math.cos(omega(k) * late);
                    double sin = Math.sin(omega(k) * late);
                    double er = y.re(k) * cos - y.im(k) * sin - gain * x.re(k);
                    double ei = y.re(k) * sin + y.im(k) * cos - gain * x.im(k);
                    double sound = square(x.re(k), x.im(k));
                    double left = square(er, ei);
                    re += er * x.re(k) + ei * x.im(k);
                    im += ei * x.re(k) - er * x.im(k);
                    chance += sound * left;
                    power += left;
                    double weight = omega(k) * omega(k) * gain * gain * sound;
                    told += weight;
                    noise += weight * left / 2;
                }
            }
            if (chance > 0) {
                likeness.add(square(re, im) / (ALIKE * chance));
            }
        }

        /** Whether it has no more in common with the original than chance brings about. */
        boolean isUnlike() {
            double mean = likeness.stream().mapToDouble(z -> z).average().orElse(0);
            return mean < 1 + CHANCE / Math.sqrt(Math.max(1, likeness.size()));
        }

        double doubt() {
            return told > 0 ? Math.sqrt(ALIKE * noise) / told : REACH;
        }
    }

    private static Spectrum sent(Piece p, int c) {
        return p.sent().get(Math.min(c, p.sent().size() - 1));
    }

    private static double omega(int k) {
        return 2 * Math.PI * k / PIECE;
    }

    private static double square(double re, double im) {
        return re * re + im * im;
    }
}
