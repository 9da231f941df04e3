package offtape.report.result;

/**
 * Noise spectrum for charts.
 *
 * @param frequencyHz middle of each third-octave band, rising
 * @param levelDb level in the band, dB re reference
 */
public record NoiseSpectrum(double[] frequencyHz, double[] levelDb) {

    /** Checks that the lists belong together. */
    public NoiseSpectrum {
        Columns.requireEven(frequencyHz, levelDb);
    }
}
