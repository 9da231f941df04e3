package offtape.core.standard;

import offtape.core.unit.Decibels;

/**
 * The Cramér-Rao bound: no unbiased estimate of a tone's frequency in white noise scatters less. D.
 * C. Rife and R. R. Boorstyn, IEEE Trans. Information Theory 20 (1974), 591-598; S. M. Kay,
 * Fundamentals of Statistical Signal Processing (1993), for the real tone: var(ω) ≥ 12 / (SNR · N ·
 * (N² − 1)) in radians a sample, SNR = A²/(2σ²).
 */
public final class FrequencyBound {

    private FrequencyBound() {}

    /**
     * Lowest standard deviation of the frequency of a real tone, hertz.
     *
     * @param signalToNoiseDb tone re the noise in the whole band up to half the sample rate
     * @param samples samples observed, 2 or more
     * @param sampleRateHz sample rate
     */
    public static double standardDeviationHz(
            double signalToNoiseDb, long samples, double sampleRateHz) {
        double n = samples;
        double variance = 12 / (Decibels.toPower(signalToNoiseDb) * n * (n * n - 1));
        return Math.sqrt(variance) * sampleRateHz / (2 * Math.PI);
    }

    /**
     * Lowest density of the phase noise that any demodulator of a real tone can show, one-sided,
     * rad²/Hz: 2 / (SNR · fs). The slope of a straight line through N samples of such a phase
     * scatters by just the bound above, for white noise of variance 1/SNR a sample fills the band
     * up to fs/2.
     *
     * @param signalToNoiseDb tone re the noise in the whole band up to half the sample rate
     * @param sampleRateHz sample rate
     */
    public static double phaseDensity(double signalToNoiseDb, double sampleRateHz) {
        return 2 / (Decibels.toPower(signalToNoiseDb) * sampleRateHz);
    }
}
