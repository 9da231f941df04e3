package offtape.report.measure.speed;

import java.util.EnumMap;
import java.util.Map;
import java.util.stream.DoubleStream;
import offtape.core.standard.FlutterBand;

/**
 * What the noise of a recording reads as speed: white phase noise rises with the frequency of the
 * change once it is taken for speed.
 */
final class NoiseFloor {

    /**
     * The quasi-peak reading of such noise over its rms, the highest of a minute, from simulated
     * tones in noise; a test holds them against others. In ten seconds it is 3 % less, in an hour 8
     * % more.
     */
    private static final double WEIGHTED_PEAK = 2;

    private static final double UNWEIGHTED_PEAK = 2;

    /** Gaussian noise stays within twice its rms for 95.45 % of the time. */
    private static final double TWO_SIGMA = 2;

    private static final double STEP_HZ = 0.25;
    private static final double HIGHEST_HZ = 500;

    private final ToneStream tone;
    private final double noiseDensity;
    private final Map<FlutterBand, Double> rms = new EnumMap<>(FlutterBand.class);

    NoiseFloor(ToneStream tone, double noiseDensity) {
        this.tone = tone;
        this.noiseDensity = noiseDensity;
        // Every band asks for the same densities, and each of those is a sum over long filters.
        double[] densities =
                DoubleStream.iterate(
                                STEP_HZ / 2,
                                f -> f < Math.min(HIGHEST_HZ, tone.rateHz() / 2),
                                f -> f + STEP_HZ)
                        .map(this::density)
                        .toArray();
        for (FlutterBand band : FlutterBand.values()) {
            rms.put(band, rms(band, densities));
        }
    }

    /** Root mean square in a band, percent. */
    double rms(FlutterBand band) {
        return rms.get(band);
    }

    private static double rms(FlutterBand band, double[] densities) {
        double sum = 0;
        for (int k = 0; k < densities.length; k++) {
            double gain = band.gain((k + 0.5) * STEP_HZ);
            sum += gain * gain * densities[k] * STEP_HZ;
        }
        return Math.sqrt(sum);
    }

    /** One-sided density at a rate of change, squared percent a hertz. */
    double density(double frequencyHz) {
        double percent = 100 / tone.nominalHz() * tone.gain(frequencyHz) * frequencyHz;
        return noiseDensity * percent * percent;
    }

    double weightedPeak() {
        return WEIGHTED_PEAK * rms(FlutterBand.WEIGHTED);
    }

    double weightedTwoSigma() {
        return TWO_SIGMA * rms(FlutterBand.WEIGHTED);
    }

    double unweightedPeak() {
        return UNWEIGHTED_PEAK * rms(FlutterBand.UNWEIGHTED);
    }
}
