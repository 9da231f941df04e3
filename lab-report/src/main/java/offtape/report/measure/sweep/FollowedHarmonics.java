package offtape.report.measure.sweep;

import java.util.List;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.Cue;
import offtape.report.measure.tone.Complex;

/**
 * The harmonics of a sweep in bands of a sixth of an octave of the fundamental. Powers are squared
 * moduli at baseband: a sine of peak A has A²/4.
 */
public final class FollowedHarmonics {

    /** Bands an octave. */
    static final int BANDS = 6;

    /** Below, the sidebands that flutter gives the fundamental itself reach the harmonics. */
    private static final double LOWEST_HZ = 40;

    private final Cue.Sweep cue;
    private final int first;
    private final int bands;
    private final double limitHz;
    private final double bandSeconds;
    private final Sums[][][] sums;

    /**
     * An empty result.
     *
     * @param topHz highest fundamental
     * @param limitHz highest frequency at which a harmonic is looked for
     * @param growthSeconds seconds in which the sweep grows by the factor e
     */
    FollowedHarmonics(
            Cue.Sweep cue, double topHz, double limitHz, double growthSeconds, int channels) {
        this.cue = cue;
        double lowest = Math.max(LOWEST_HZ, cue.startHz());
        this.first = (int) Math.ceil(BANDS * Math.log(lowest / 1000) / Math.log(2) + 0.5);
        int last = (int) Math.floor(BANDS * Math.log(topHz / 1000) / Math.log(2) - 0.5);
        this.bands = Math.max(0, last - first + 1);
        this.limitHz = limitHz;
        this.bandSeconds = growthSeconds * Math.log(2) / BANDS;
        this.sums = new Sums[channels][HarmonicFollower.HIGHEST][bands];
        for (Sums[][] channel : sums) {
            for (Sums[] order : channel) {
                for (int i = 0; i < bands; i++) {
                    order[i] = new Sums();
                }
            }
        }
    }

    /** Sums of one harmonic over one band. */
    private static final class Sums {
        private double re;
        private double im;
        private double power;
        private double widthHz;
        private int count;

        void add(Complex z, double width) {
            re += z.re();
            im += z.im();
            power += z.re() * z.re() + z.im() * z.im();
            widthHz += width;
            count++;
        }

        double meanSquared() {
            return (re * re + im * im) / ((double) count * count);
        }
    }

    /** Takes one sample of every order and channel, orders from 1, at a fundamental frequency. */
    void add(double hz, List<List<Baseband>> orders, int k, double widthHz) {
        int i = (int) Math.rint(BANDS * Math.log(hz / 1000) / Math.log(2)) - first;
        if (i < 0 || i >= bands) {
            return;
        }
        for (int c = 0; c < sums.length; c++) {
            Complex fundamental = at(orders.get(0).get(c), k);
            double size = fundamental.size();
            Complex back = size > 0 ? fundamental.conjugate().times(1 / size) : Complex.ZERO;
            Complex turn = back;
            for (int order = 0; order < orders.size(); order++) {
                sums[c][order][i].add(at(orders.get(order).get(c), k).times(turn), widthHz);
                turn = turn.times(back);
            }
        }
    }

    private static Complex at(Baseband base, int k) {
        return new Complex(base.re()[k], base.im()[k]);
    }

    /** Whether these are the harmonics of a cue. */
    boolean isOf(Cue.Sweep other) {
        return cue.equals(other);
    }

    /** Number of bands, of rising frequency. */
    int size() {
        return bands;
    }

    /** Middle of a band, hertz of the fundamental. */
    double frequencyHz(int i) {
        return 1000 * Math.pow(2, (double) (first + i) / BANDS);
    }

    /** Lower end of the lowest band, hertz of the fundamental. */
    double lowestHz() {
        return 1000 * Math.pow(2, (first - 0.5) / BANDS);
    }

    /** How long a band lasts. */
    double bandSeconds() {
        return bandSeconds;
    }

    /** Whether a harmonic of a band lies wholly where it can be heard. */
    boolean reaches(int order, int i) {
        double top = frequencyHz(i) * Math.pow(2, 0.5 / BANDS);
        return order * top <= limitHz && sums[0][order - 1][i].count > 1;
    }

    /** Power of a harmonic in a band, noise included. */
    double power(int channel, int order, int i) {
        return sums[channel][order - 1][i].meanSquared();
    }

    /**
     * Phase of a harmonic in a band less its order times that of the fundamental, radians: each
     * sample was turned back by the fundamental at the same moment, so motion is not in it.
     */
    double phase(int channel, int order, int i) {
        Sums s = sums[channel][order - 1][i];
        return Math.atan2(s.im, s.re);
    }

    /**
     * Power that noise adds to {@link #power}: what the silence holds around the harmonic, or what
     * is left when the mean is taken out of the band, whichever is more. The latter sees modulation
     * noise too.
     *
     * @param density noise of the channel, or null if unknown
     */
    double noise(int channel, int order, int i, PowerDensity density, double speedRatio) {
        Sums s = sums[channel][order - 1][i];
        double independent = Math.max(2, s.widthHz / s.count * bandSeconds);
        double rest = Math.max(0, s.power / s.count - s.meanSquared()) / (independent - 1);
        if (density == null) {
            return rest;
        }
        double hz = order * frequencyHz(i) * speedRatio;
        double half = Math.pow(2, 0.5 / BANDS);
        return Math.max(rest, density.mean(hz / half, hz * half) / bandSeconds / 2);
    }
}
