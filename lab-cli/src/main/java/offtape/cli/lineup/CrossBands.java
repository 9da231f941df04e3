package offtape.cli.lineup;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Powers and cross-power of two channels in narrow bands side by side, means over pieces of sound
 * that overlap by half (Welch's way).
 */
final class CrossBands {

    /** Bins a band; over its width a delay of half a millisecond turns the phase by 0.15 rad. */
    private static final int WIDTH = 8;

    private final int first;
    private final double binHz;

    /** Power left, power right, and the cross-power's real and imaginary part, a band each. */
    final double[] left;

    final double[] right;
    final double[] re;
    final double[] im;

    private final double[] centreHz;

    /** Pieces that count as independent, times the bins of a band. */
    final double means;

    private double strongestShare;
    private double strongestHz;
    private double strongestPhase;

    /**
     * Takes a stretch.
     *
     * @param sound two channels, at least n frames
     * @param n samples of a piece
     */
    CrossBands(double[][] sound, int n, int sampleRateHz, double fromHz, double toHz) {
        this.binHz = (double) sampleRateHz / n;
        this.first = (int) Math.ceil(fromHz / binHz);
        int bands = (int) ((toHz / binHz - first) / WIDTH);
        this.left = new double[bands];
        this.right = new double[bands];
        this.re = new double[bands];
        this.im = new double[bands];
        this.centreHz = new double[bands];
        double[][] bins = new double[4][bands * WIDTH];
        int pieces = 0;
        for (int from = 0; from + n <= sound[0].length; from += n / 2) {
            add(piece(sound[0], from, n), piece(sound[1], from, n), bins);
            pieces++;
        }
        // neighbouring bins and pieces under a Hann window share about half of what they hold
        this.means = Math.max(1, 0.5 * pieces) * 0.5 * WIDTH;
        gather(bins);
        findCentres(bins);
        findStrongest(bins);
    }

    private static Spectrum piece(double[] x, int from, int n) {
        double[] piece = new double[n];
        for (int i = 0; i < n; i++) {
            piece[i] = x[from + i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / n));
        }
        return RealFft.ofSize(n).forward(piece);
    }

    private void add(Spectrum l, Spectrum r, double[][] bins) {
        for (int i = 0; i < bins[0].length; i++) {
            int k = first + i;
            bins[0][i] += l.power(k);
            bins[1][i] += r.power(k);
            // left times right's conjugate: its phase is 2πf times right's delay
            bins[2][i] += l.re(k) * r.re(k) + l.im(k) * r.im(k);
            bins[3][i] += l.im(k) * r.re(k) - l.re(k) * r.im(k);
        }
    }

    private void gather(double[][] bins) {
        double[][] bands = {left, right, re, im};
        for (int kind = 0; kind < bands.length; kind++) {
            for (int i = 0; i < bins[kind].length; i++) {
                bands[kind][i / WIDTH] += bins[kind][i];
            }
        }
    }

    /**
     * Where in a band the cross-power lies, which few lines do not fill evenly: the phase of a sum
     * of pointers is the mean of theirs, each with its part along the sum as weight.
     */
    private void findCentres(double[][] bins) {
        for (int band = 0; band < centreHz.length; band++) {
            double sum = 0;
            double all = 0;
            for (int i = band * WIDTH; i < (band + 1) * WIDTH; i++) {
                double along = bins[2][i] * re[band] + bins[3][i] * im[band];
                sum += (i - band * WIDTH) * along;
                all += along;
            }
            double centre = all > 0 ? sum / all : 0.5 * (WIDTH - 1);
            centreHz[band] =
                    (first + band * WIDTH + Math.max(0, Math.min(WIDTH - 1, centre))) * binHz;
        }
    }

    private void findStrongest(double[][] bins) {
        double all = 0;
        int peak = 0;
        for (int i = 0; i < bins[0].length; i++) {
            all += power(bins, i);
            peak = power(bins, i) > power(bins, peak) ? i : peak;
        }
        double near = 0;
        double centre = 0;
        double x = 0;
        double y = 0;
        for (int i = Math.max(0, peak - 3); i <= Math.min(bins[0].length - 1, peak + 3); i++) {
            near += power(bins, i);
            centre += (first + i) * power(bins, i);
            x += bins[2][i];
            y += bins[3][i];
        }
        strongestShare = all > 0 ? near / all : 0;
        strongestHz = near > 0 ? centre / near * binHz : 0;
        strongestPhase = Math.atan2(y, x);
    }

    private static double power(double[][] bins, int i) {
        return bins[0][i] + bins[1][i];
    }

    int size() {
        return re.length;
    }

    /** Frequency of a band, the centre of its cross-power. */
    double hz(int band) {
        return centreHz[band];
    }

    /** Squared coherence of a band, 0 to 1. */
    double coherence(int band) {
        double product = left[band] * right[band];
        return product > 0 ? Math.min(1, (re[band] * re[band] + im[band] * im[band]) / product) : 0;
    }

    /** Share of all power that lies in the strongest line. */
    double strongestShare() {
        return strongestShare;
    }

    /** Frequency of the strongest line. */
    double strongestHz() {
        return strongestHz;
    }

    /** Phase by which right is late there, radians, half a turn at most. */
    double strongestPhase() {
        return strongestPhase;
    }
}
