package offtape.report.measure.speed;

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

    NoiseFloor(ToneStream tone, double noiseDensity) {
        this.tone = tone;
        this.noiseDensity = noiseDensity;
    }

    /** Root mean square in a band, percent. */
    double rms(FlutterBand band) {
        double sum = 0;
        for (double f = STEP_HZ / 2; f < Math.min(HIGHEST_HZ, tone.rateHz() / 2); f += STEP_HZ) {
            double gain = band.gain(f);
            sum += gain * gain * density(f) * STEP_HZ;
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
