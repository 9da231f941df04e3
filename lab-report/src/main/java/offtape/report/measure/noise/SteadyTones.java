package offtape.report.measure.noise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.PowerDensity;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/** Steady lines in a density that stand out of the noise beside them and are no hum. */
final class SteadyTones {

    private static final int BESIDE_FROM = 4;
    private static final int BESIDE_TO = 24;
    private static final int REACH = 3;
    private static final int[] BESIDE_ORDERS = {-2, -1, 1, 2};

    /** A median of normal values scatters by so much more than their mean. */
    private static final double MEDIAN_OF_MEAN = 1.2533;

    /** Bins under a Hann window whose powers scatter like one. */
    private static final double ALIKE = 1.944;

    /** Noise beside a line may have been found too low by so many deviations. */
    private static final double DEVIATIONS = 4.5;

    /** Mains whose frequency is not known lie within this of 50 or 60 Hz, and so do multiples. */
    private static final double MAINS_REACH_HZ = 1;

    private static final int UNKNOWN_MULTIPLES = 12;

    /** How far found mains may wander through the silence. */
    private static final double KNOWN_REACH_HZ = 0.03;

    /**
     * Where a line is brought to be looked at closely; its neighbours 50 or 60 Hz off fit beside.
     */
    private static final double SHIFTED_HZ = 90;

    private static final double PASS_HZ = 115;
    private static final double STOP_HZ = 200;
    private static final double OFF_PLACE_LINES = 2;

    /** Half the amplitude of a sine is on either side of 0 Hz. */
    private static final double SIDES = 4;

    /** A line of the mains holds so much of the power that was found around it. */
    private static final double MOST_OF_IT = 0.5;

    private final double[] samples;
    private final int rateHz;
    private final PowerDensity density;
    private final double freedom;

    /**
     * Lines of a stretch of sound.
     *
     * @param density of the same, by transforms that overlap by half
     */
    SteadyTones(double[] samples, double rateHz, PowerDensity density) {
        this.samples = samples;
        this.rateHz = (int) Math.round(rateHz);
        this.density = density;
        double pieces = density.pieces();
        // Pieces that overlap by half are alike by 1/36 (Welch 1967).
        this.freedom = 36 * pieces * pieces / (19 * pieces - 1);
    }

    /**
     * A line.
     *
     * @param frequencyHz where it is highest
     * @param power mean square
     * @param variance of the power
     */
    record Tone(double frequencyHz, double power, double variance) {}

    /**
     * How many times too much power is told of what sounds in the middle only: transforms overlap
     * there, but not at the ends.
     */
    double middle() {
        return samples.length / ((density.bins() - 1.0) * density.pieces());
    }

    /**
     * Finds them.
     *
     * @param falseAlarms how many lines noise alone may show, on average
     * @param mainsHz frequency of the mains, if it was found
     */
    List<Tone> find(double fromHz, double toHz, double falseAlarms, OptionalDouble mainsHz) {
        int first = Math.max(BESIDE_TO, (int) Math.ceil(fromHz / density.binHz()));
        int last =
                (int) Math.min(density.bins() - 1 - BESIDE_TO, Math.floor(toHz / density.binHz()));
        double share = falseAlarms / Math.max(1, last - first + 1);
        double scatter =
                MEDIAN_OF_MEAN * Math.sqrt(2 / freedom * ALIKE / (BESIDE_TO - BESIDE_FROM + 1));
        double threshold =
                new ChiSquaredDistribution(freedom).inverseCumulativeProbability(1 - share)
                        / freedom
                        * (1 + DEVIATIONS * scatter);
        List<Tone> tones = new ArrayList<>();
        for (int k = first; k <= last; k++) {
            double noise = isHighest(k) ? noise(k) : Double.POSITIVE_INFINITY;
            if (density.at(k) > threshold * noise) {
                Tone tone = tone(k, noise);
                if (!isHum(tone, mainsHz, threshold)) {
                    tones.add(tone);
                }
            }
        }
        return tones;
    }

    private boolean isHighest(int bin) {
        for (int d = 1; d <= REACH; d++) {
            if (density.at(bin - d) >= density.at(bin) || density.at(bin + d) > density.at(bin)) {
                return false;
            }
        }
        return true;
    }

    /** The louder side's median over that of χ², so that an edge of the noise is no line. */
    private double noise(int bin) {
        double median = Math.pow(1 - 2 / (9 * freedom), 3);
        return Math.max(median(bin - BESIDE_TO), median(bin + BESIDE_FROM)) / median;
    }

    private double median(int from) {
        double[] beside = new double[BESIDE_TO - BESIDE_FROM + 1];
        Arrays.setAll(beside, i -> density.at(from + i));
        Arrays.sort(beside);
        return beside[beside.length / 2];
    }

    private Tone tone(int bin, double noise) {
        double power = 0;
        double squares = 0;
        for (int k = bin - REACH; k <= bin + REACH; k++) {
            double over = density.at(k) - noise;
            power += over * density.binHz();
            squares += noise * (noise + 2 * Math.max(0, over));
        }
        double variance = 2 / freedom * ALIKE * squares * density.binHz() * density.binHz();
        return new Tone(bin * density.binHz(), Math.max(0, power), variance);
    }

    /**
     * Whether a line belongs to the mains. Low orders are left to the search for hum; a high one
     * must lie in its place and be as steady, or have others of its kind beside it, since usual
     * test tones lie near multiples, too.
     */
    private boolean isHum(Tone tone, OptionalDouble mainsHz, double threshold) {
        double hz = tone.frequencyHz();
        double wide = (REACH + 0.5) * density.binHz();
        if (mainsHz.isEmpty()) {
            return isNear(hz, 50, wide) || isNear(hz, 60, wide);
        }
        double mains = mainsHz.getAsDouble();
        double order = Math.rint(hz / mains);
        return Math.abs(hz - order * mains) < wide + order * KNOWN_REACH_HZ
                && (order <= UNKNOWN_MULTIPLES
                        || isInComb(order, mains, threshold)
                        || isSteady(tone, order * mains));
    }

    /**
     * Whether lines stand at two or more of the four nearest orders, as in the buzz of rectifiers.
     */
    private boolean isInComb(double order, double mains, double threshold) {
        int lines = 0;
        for (int d : BESIDE_ORDERS) {
            int place = (int) Math.round((order + d) * mains / density.binHz());
            double most = 0;
            for (int k = place - 2; k <= place + 2; k++) {
                boolean inside = k >= BESIDE_TO && k < density.bins() - BESIDE_TO;
                most = inside ? Math.max(most, density.at(k) / noise(k)) : most;
            }
            lines += most > threshold ? 1 : 0;
        }
        return lines >= 2;
    }

    /** Whether a tone lies exactly there and neither moves nor comes and goes. */
    private boolean isSteady(Tone tone, double hz) {
        Baseband lows =
                Downconverter.of(PASS_HZ, STOP_HZ, rateHz)
                        .convert(
                                new MemoryAudio("silence", rateHz, samples),
                                0,
                                (double) samples.length / rateHz,
                                PhaseLaw.steady(hz - SHIFTED_HZ))
                        .get(0);
        LineSpectrum spectrum = new LineSpectrum(lows.re(), lows.rateHz());
        // The mains frequency is known to a few hundredths of a line, which a high order
        // multiplies.
        double place = spectrum.highest(SHIFTED_HZ, OFF_PLACE_LINES);
        return SIDES * spectrum.power(place) > MOST_OF_IT * tone.power()
                && SteadyLine.is(spectrum, place, spectrum.noise(place));
    }

    private static boolean isNear(double hz, double mains, double wide) {
        double order = Math.rint(hz / mains);
        return order <= UNKNOWN_MULTIPLES
                && Math.abs(hz - order * mains) < wide + order * MAINS_REACH_HZ;
    }
}
