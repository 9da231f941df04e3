package offtape.core.align;

/**
 * A sound of half a second that is sent before and behind another one, so that its return can be
 * put back in time to a fraction of a sample, whatever it is: a rising glide from 500 Hz to 8 kHz
 * and the same glide falling. Its period changes evenly with time, so a wrong speed moves a glide
 * as a whole without making it unlike itself, and moves the rising and the falling one against each
 * other: their mean is the time, their distance the speed. It stays where tape is at its best.
 *
 * <p>Times are in seconds from the middle of the mark.
 */
final class AlignmentMark {

    /** Length of one glide, seconds. */
    static final double GLIDE_S = 0.25;

    private static final double LOW_HZ = 500;
    private static final double HIGH_HZ = 8000;

    /** The highest frequency as a share of the sample rate, where that is low. */
    private static final double HIGHEST_SHARE = 0.4;

    private static final double LOW_EDGE_S = 0.02;
    private static final double HIGH_EDGE_S = 0.004;

    private final int sampleRateHz;
    private final double highHz;

    /** From the low end of a glide to where its period would be nothing, seconds. */
    private final double vanishing;

    /**
     * The mark at a sample rate.
     *
     * @param sampleRateHz at least 4 kHz
     */
    AlignmentMark(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        this.highHz = Math.min(HIGH_HZ, HIGHEST_SHARE * sampleRateHz);
        this.vanishing = GLIDE_S * highHz / (highHz - LOW_HZ);
    }

    /** Frames of the whole mark. */
    int frames() {
        return (int) Math.round(2 * GLIDE_S * sampleRateHz);
    }

    /** Its middle, frames from its beginning. */
    double middle() {
        return GLIDE_S * sampleRateHz;
    }

    /** Its samples, with a peak of 1. */
    double[] samples() {
        double[] x = new double[frames()];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / sampleRateHz - GLIDE_S;
            x[i] = envelope(t) * Math.cos(phase(t));
        }
        return x;
    }

    /** Its envelope at a time; 0 outside. */
    double envelope(double seconds) {
        double fromLow = GLIDE_S - Math.abs(seconds);
        double fromHigh = Math.abs(seconds);
        return edge(fromLow / LOW_EDGE_S) * edge(fromHigh / HIGH_EDGE_S);
    }

    private static double edge(double place) {
        return place <= 0 ? 0 : place >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * place);
    }

    /** Its phase at a time, radians; it grows in both glides, as that of a sound does. */
    double phase(double seconds) {
        double fromLow = GLIDE_S - Math.abs(seconds);
        double turns = -LOW_HZ * vanishing * Math.log1p(-fromLow / vanishing);
        return 2 * Math.PI * (seconds < 0 ? turns : -turns);
    }

    /**
     * By how much the middles of the falling and the rising glide seem to lie apart if the speed is
     * off.
     *
     * @return seconds for a speed that is off by the whole of itself
     */
    double parting() {
        return 2 * (vanishing - GLIDE_S);
    }

    /** Rms width of its power spectrum about the mean, hertz: power falls as 1/f². */
    double widthHz() {
        double product = LOW_HZ * highHz;
        double mean = product / (highHz - LOW_HZ) * Math.log(highHz / LOW_HZ);
        return Math.sqrt(product - mean * mean);
    }
}
