package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;

/**
 * Spectrum of Gaussian noise: a density of unit rms ahead of an optional filter, scaled.
 *
 * @param rateHz sample rate
 * @param deviation standard deviation of the samples ahead of the filter
 * @param filter the filter, or null for white noise
 */
record NoiseShape(double rateHz, double deviation, Kernel filter) {

    /** The band in which noise is stated as unweighted. */
    static final double LOW_HZ = 22.4;

    /** Upper end of that band. */
    static final double HIGH_HZ = 22_400;

    private static final double PIVOT_HZ = 1000;
    private static final double FLOOR_HZ = 20;
    private static final double DB_PER_OCTAVE_OF_SLOPE_ONE = 20 * Math.log10(2);
    private static final int POINTS = 2048;

    /** Noise of a slope whose rms between 22.4 Hz and 22.4 kHz is given. */
    static NoiseShape ofBandRms(double rateHz, double rms, double tiltDbPerOctave) {
        Kernel filter = tiltDbPerOctave == 0 ? null : tilt(rateHz, tiltDbPerOctave);
        NoiseShape unit = new NoiseShape(rateHz, 1, filter);
        return new NoiseShape(rateHz, rms / Math.sqrt(unit.power(f -> 1)), filter);
    }

    /**
     * Power between 22.4 Hz and 22.4 kHz (or half the sample rate) behind a weighting, by Simpson's
     * rule along the logarithm of frequency.
     *
     * @param weighting power gain at a frequency in hertz
     */
    double power(DoubleUnaryOperator weighting) {
        double low = Math.log(LOW_HZ);
        double step = (Math.log(Math.min(HIGH_HZ, rateHz / 2)) - low) / POINTS;
        double sum = 0;
        for (int i = 0; i <= POINTS; i++) {
            double f = Math.exp(low + i * step);
            double weight = i == 0 || i == POINTS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * f * gainSquared(f) * weighting.applyAsDouble(f);
        }
        return deviation * deviation * sum * step / 3 / (rateHz / 2);
    }

    private double gainSquared(double frequencyHz) {
        if (filter == null) {
            return 1;
        }
        double gain = filter.response(frequencyHz);
        return gain * gain;
    }

    private static Kernel tilt(double rateHz, double dbPerOctave) {
        double exponent = dbPerOctave / DB_PER_OCTAVE_OF_SLOPE_ONE;
        return Kernel.ofMagnitude(
                rateHz,
                BlockGeometry.at(rateHz).reach(),
                f -> Math.pow(Math.max(FLOOR_HZ, f) / PIVOT_HZ, exponent));
    }
}
