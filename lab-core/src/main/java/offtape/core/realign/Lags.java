package offtape.core.realign;

import java.util.ArrayList;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Correlation of parts of a track with a stretch of its return at many lags. A long part is taken
 * in pieces whose correlations are added, so that its length costs no memory.
 */
final class Lags {

    /** Values of a piece: more than twenty minutes. */
    static final int PIECE = 1 << 16;

    private static final int RATE = LevelTrace.RATE_HZ;

    private final LevelTrace original;
    private final LevelTrace returned;
    private final int first;
    private final int length;

    /** How far a part may begin before the stretch does. */
    private final int before;

    private final double farthestS;
    private final int lags;
    private final RealFft fft;
    private final Spectrum[] heard;
    private final double[] energy;

    /**
     * Correlations with a stretch of the return.
     *
     * @param first where the stretch begins
     * @param last where it ends
     * @param longest values that a part has at most; for no more than {@link #PIECE} all lags are
     *     looked at, else those at which a place counts
     * @param farthestS how far places may lie from the beginning, seconds
     */
    Lags(
            LevelTrace original,
            LevelTrace returned,
            int first,
            int last,
            int longest,
            double farthestS) {
        boolean isOnePiece = longest <= PIECE;
        int farthest = (int) Math.ceil(farthestS * RATE) + 1;
        this.original = original;
        this.returned = returned;
        this.first = first;
        this.length = last - first;
        this.farthestS = farthestS;
        this.before = isOnePiece ? longest : farthest;
        this.lags = isOnePiece ? length + before : Math.min(length + before, 2 * farthest);
        this.fft = RealFft.ofSize(RealFft.nextPowerOfTwo(Math.min(longest, PIECE) + lags));
        this.heard = isOnePiece ? heard(0) : null;
        this.energy = new double[length + before + longest + 1];
        double[] squares = new double[length + before + longest];
        for (int b = 0; b < returned.bands(); b++) {
            for (int i = 0; i < length + before; i++) {
                double x = returned.at(b, first - before + i);
                squares[i] += x * x;
            }
        }
        for (int i = 0; i < squares.length; i++) {
            energy[i + 1] = energy[i] + squares[i];
        }
    }

    /** Points of each transform, which most of the memory goes into. */
    int points() {
        return fft.size();
    }

    /** The stretch's bands from a piece on, transformed. */
    private Spectrum[] heard(int piece) {
        Spectrum[] bands = new Spectrum[returned.bands()];
        int from = first - before + piece * PIECE;
        int some = Math.max(0, Math.min(fft.size(), first + length - from));
        for (int b = 0; b < bands.length; b++) {
            bands[b] = fft.forward(returned.stretched(b, from, some, 1, fft.size()));
        }
        return bands;
    }

    /**
     * Places at which a part of the track is most like the return.
     *
     * @param from where the part begins
     * @param part values that it has
     * @param step how much slower the return is taken to be
     */
    List<Place> places(int from, int part, double step) {
        int span = (int) Math.ceil(part * step);
        double[] re = new double[fft.size() / 2 + 1];
        double[] im = new double[re.length];
        double sought = 0;
        for (int piece = 0; piece * PIECE < span; piece++) {
            Spectrum[] there = heard != null ? heard : heard(piece);
            int some = Math.min(PIECE, span - piece * PIECE);
            double begin = from + piece * PIECE / step;
            for (int b = 0; b < there.length; b++) {
                double[] x = original.stretched(b, begin, some, 1 / step, fft.size());
                for (double v : x) {
                    sought += v * v;
                }
                Spectrum product = there[b].timesConjugate(fft.forward(x));
                for (int k = 0; k < re.length; k++) {
                    re[k] += product.re(k);
                    im[k] += product.im(k);
                }
            }
        }
        double[] both = fft.inverse(Spectrum.of(fft.size(), re, im));
        return peaks(both, sought, span, from * step, step);
    }

    private List<Place> peaks(double[] both, double sought, int span, double from, double step) {
        List<Place> found = new ArrayList<>();
        double share = Math.min(1, span / (double) length);
        double least = 0.2 * share * energy[energy.length - 1];
        for (int k = 1; k < lags; k++) {
            if (both[k] > 0 && both[k] >= both[k - 1] && both[k] > both[k + 1]) {
                double there = energy[Math.min(energy.length - 1, k + span)] - energy[k];
                double size = Math.sqrt(sought * Math.max(there, least));
                double start = (first - before + k - from) / RATE;
                if (size > 0 && Math.abs(start) < farthestS) {
                    found.add(new Place(start, step, both[k] / size));
                }
            }
        }
        return found;
    }
}
