package offtape.report.measure.noise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import offtape.core.dsp.PowerDensity;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/** Steady lines in a density that stand out of the noise beside them and are no hum. */
final class SteadyTones {

    private static final int BESIDE_FROM = 4;
    private static final int BESIDE_TO = 24;
    private static final int REACH = 3;

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

    private final PowerDensity density;
    private final double freedom;

    /**
     * Lines of a density.
     *
     * @param samples length of the stretch that it was made of, by transforms of half their overlap
     */
    SteadyTones(PowerDensity density, int samples) {
        this.density = density;
        int transform = 2 * (density.bins() - 1);
        double pieces = 2.0 * (samples - transform) / transform + 1;
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
        DoublePredicate hum = hum(mainsHz);
        List<Tone> tones = new ArrayList<>();
        for (int k = first; k <= last; k++) {
            if (isHighest(k) && !hum.test(k * density.binHz())) {
                double noise = noise(k);
                if (density.at(k) > threshold * noise) {
                    tones.add(tone(k, noise));
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

    /** Whether a frequency is so near to a multiple of the mains that it is taken for hum. */
    private DoublePredicate hum(OptionalDouble mainsHz) {
        double wide = (REACH + 0.5) * density.binHz();
        if (mainsHz.isPresent()) {
            double mains = mainsHz.getAsDouble();
            return hz -> {
                double order = Math.rint(hz / mains);
                return Math.abs(hz - order * mains) < wide + order * KNOWN_REACH_HZ;
            };
        }
        return hz -> isNear(hz, 50, wide) || isNear(hz, 60, wide);
    }

    private static boolean isNear(double hz, double mains, double wide) {
        double order = Math.rint(hz / mains);
        return order <= UNKNOWN_MULTIPLES
                && Math.abs(hz - order * mains) < wide + order * MAINS_REACH_HZ;
    }
}
