package offtape.report.measure.tone;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.HannWindow;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.SincInterpolator;
import offtape.core.dsp.Spectrum;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * The harmonics of one steady tone, read on the tone's own phase (order tracking): the stretch is
 * resampled so that every cycle takes the same number of samples, which gathers each harmonic in
 * one line however the tape wavers. The noise is read from the lines beside each harmonic.
 */
public final class OrderSpectrum {

    private static final int UNREST_FROM = 2;
    private static final int NOISE_FROM = 6;
    private static final int NOISE_TO = 40;
    private static final int MARGIN = 40;

    /** Keeps clear of the fades of a tone and of an error of place. */
    private static final double MARGIN_S = 0.06;

    /** So much of a tone is looked at: at 96 kHz half a minute takes 200 MB for a while. */
    static final double LONGEST_S = 30;

    /**
     * Noise that is followed by its own phase leaves a line and waves of level all over the band.
     * The level of narrow-band noise follows Rayleigh's law, of which π/4 of the power is the
     * line's and 1 − π/4 = 0.27 of that the waves'; beside a tone of s times the noise's power they
     * have 1/(2s). Up to this share there is a tone, of five times the power or more.
     */
    private static final double WAVES = 0.1;

    /** Equivalent width of a line of Hann's window, in lines. */
    private static final double HANN_LINES = 1.5;

    private final Spectrum spectrum;
    private final int cycles;
    private final double windowSum;

    private OrderSpectrum(Spectrum spectrum, int cycles, double windowSum) {
        this.spectrum = spectrum;
        this.cycles = cycles;
        this.windowSum = windowSum;
    }

    /**
     * Analyses every channel of a stretch, all on the phase of the channel in which the tone is
     * louder, or of another if the loudest holds noise.
     *
     * @param hz frequency expected in the recording
     * @return one entry a channel, or an empty list if the stretch is too short or no channel holds
     *     a tone of five times the power that noise has in the band it is followed in
     */
    public static List<OrderSpectrum> of(
            AudioSource recording, ProgrammeReturn.Span span, double hz) {
        OrderBand band = OrderBand.of(hz);
        if (hz + band.stopHz() > recording.sampleRateHz() / 2.0) {
            return List.of();
        }
        Downconverter converter =
                Downconverter.of(
                        band.passHz(), band.stopHz(), recording.sampleRateHz(), 16 * band.passHz());
        List<Baseband> bases =
                converter.convert(recording, span.from(), span.to(), PhaseLaw.steady(hz));
        double share = 2 * band.passHz() / hz / HANN_LINES;
        return bases.stream()
                .filter(b -> b.size() >= 8 && b.meanPower() > 0)
                .sorted(Comparator.comparingDouble(Baseband::meanPower).reversed())
                .map(b -> resampled(recording, b, hz))
                .filter(orders -> orders.stream().anyMatch(o -> o.isTone(share)))
                .findFirst()
                .orElse(List.of());
    }

    /**
     * Whether a tone was followed.
     *
     * @param share of the frequency of the tone that the band of the waves has
     */
    private boolean isTone(double share) {
        return noise(1) * share * cycles < WAVES * power(1);
    }

    /** The same for a tone of the programme, clear of its ends; for the beginning of a long one. */
    public static List<OrderSpectrum> of(ProgrammeReturn ret, Cue.Tone tone) {
        double hz = tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames());
        ProgrammeReturn.Span span = ret.span(tone.startFrame(), tone.frames(), MARGIN_S);
        return of(ret.recording(), span.beginning(LONGEST_S), hz);
    }

    private static List<OrderSpectrum> resampled(AudioSource recording, Baseband base, double hz) {
        int rate = recording.sampleRateHz();
        double[] phase = base.unwrappedPhase();
        double first = base.firstSeconds();
        double length = (phase.length - 1) / base.rateHz();
        double turns = hz * length + (phase[phase.length - 1] - phase[0]) / (2 * Math.PI);
        int cycles = (int) Math.floor(turns);
        if (cycles < 2 * NOISE_TO / 3) {
            return List.of();
        }
        int n = RealFft.nextPowerOfTwo((int) (length * rate));
        double[] places = places(phase, base.rateHz(), hz, cycles, n);
        for (int k = 0; k < n; k++) {
            places[k] = places[k] * rate + MARGIN;
        }
        long start = Math.round(first * rate) - MARGIN;
        double[][] x = recording.read(start, (int) Math.ceil(length * rate) + 2 * MARGIN);
        double[] window = HannWindow.of(n);
        List<OrderSpectrum> result = new ArrayList<>();
        for (double[] channel : x) {
            double[] y = SincInterpolator.at(channel, places);
            Spectrum spectrum = RealFft.ofSize(n).forward(HannWindow.applied(window, y, 0));
            result.add(new OrderSpectrum(spectrum, cycles, n / 2.0));
        }
        return result;
    }

    /** Seconds from the first phase at which a share of all cycles is over, evenly spread. */
    private static double[] places(double[] phase, double phaseHz, double hz, int cycles, int n) {
        double[] places = new double[n];
        double t = 0;
        double step = (double) cycles / n / hz;
        for (int k = 0; k < n; k++) {
            // Each correction leaves the deviation's share of the error before it, a percent at
            // most.
            double wanted = (double) cycles * k / n;
            double have = hz * t + (at(phase, t * phaseHz) - phase[0]) / (2 * Math.PI);
            t += (wanted - have) / hz;
            places[k] = t;
            t += step;
        }
        return places;
    }

    /** Cubic interpolation (Catmull and Rom) between phase values. */
    private static double at(double[] y, double place) {
        int i = (int) Math.max(0, Math.min(y.length - 2, Math.floor(place)));
        double u = place - i;
        double a = y[Math.max(0, i - 1)];
        double b = y[i];
        double c = y[i + 1];
        double d = y[Math.min(y.length - 1, i + 2)];
        return b + 0.5 * u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)));
    }

    /**
     * The same without what leaked in of another channel.
     *
     * @param other the other channel of the same tone
     * @param leak what of the other is heard here, at an order
     */
    public OrderSpectrum without(OrderSpectrum other, DoubleFunction<Complex> leak) {
        double[] re = new double[spectrum.bins()];
        double[] im = new double[spectrum.bins()];
        for (int k = 0; k < re.length; k++) {
            Complex part =
                    leak.apply((double) k / cycles)
                            .times(new Complex(other.spectrum.re(k), other.spectrum.im(k)));
            re[k] = spectrum.re(k) - part.re();
            im[k] = spectrum.im(k) - part.im();
        }
        return new OrderSpectrum(Spectrum.of(2 * (re.length - 1), re, im), cycles, windowSum);
    }

    /** Highest order whose line lies below a frequency, given that of the fundamental. */
    public static int highestOrder(double fundamentalHz, double limitHz) {
        return (int) Math.floor(limitHz / fundamentalHz);
    }

    /** Squared peak amplitude of a harmonic, noise included. */
    public double power(int order) {
        int bin = order * cycles;
        return bin >= spectrum.bins() - 1 ? 0 : scaled(spectrum.power(bin));
    }

    /**
     * Squared peak amplitude that noise alone would show there: from the median of the lines
     * beside, which for noise is ln 2 of the mean and is not moved by a stray line.
     */
    public double noise(int order) {
        int middle = order * cycles;
        double[] beside = new double[2 * (NOISE_TO - NOISE_FROM)];
        int count = 0;
        for (int d = NOISE_FROM; d < NOISE_TO; d++) {
            for (int bin : new int[] {middle - d, middle + d}) {
                if (bin > 0 && bin < spectrum.bins() - 1) {
                    beside[count++] = scaled(spectrum.power(bin));
                }
            }
        }
        if (count == 0) {
            return 0;
        }
        double[] sorted = Arrays.copyOf(beside, count);
        Arrays.sort(sorted);
        return (sorted[(count - 1) / 2] + sorted[count / 2]) / 2 / Math.log(2);
    }

    /**
     * Squared peak amplitude by which a line is not what it would be for ever: noise, or the mean
     * of the nearest lines if that is more, where slow changes of the tone's level show. Hann's
     * window spreads a steady line to its neighbours and no further.
     */
    public double unrest(int order) {
        int middle = order * cycles;
        double sum = 0;
        int count = 0;
        for (int d = UNREST_FROM; d < NOISE_FROM; d++) {
            for (int bin : new int[] {middle - d, middle + d}) {
                if (bin > 0 && bin < spectrum.bins() - 1) {
                    sum += scaled(spectrum.power(bin));
                    count++;
                }
            }
        }
        return Math.max(noise(order), count == 0 ? 0 : sum / count);
    }

    /** The fundamental's complex peak amplitude. */
    public Complex fundamental() {
        double scale = 2 / windowSum;
        return new Complex(scale * spectrum.re(cycles), scale * spectrum.im(cycles));
    }

    private double scaled(double binPower) {
        return 4 * binPower / (windowSum * windowSum);
    }
}
