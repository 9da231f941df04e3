package offtape.core.programme;

/**
 * The exponential sweep of a programme: phase 2π f1 L (e^(t/L) − 1) with L = T / ln(f2/f1), so that
 * the n-th harmonic is the same sweep, L ln n earlier.
 *
 * <p>Source: A. Farina, "Simultaneous measurement of impulse response and distortion with a
 * swept-sine technique", AES 108th Convention, 2000; A. Novak, P. Lotton, L. Simon, "Synchronized
 * swept-sine", J. Audio Eng. Soc. 63(10), 2015.
 *
 * @param startHz frequency at t = 0
 * @param endHz frequency at t = T, above {@code startHz}
 * @param seconds T
 */
public record ExponentialSweep(double startHz, double endHz, double seconds) {

    /** The sweep of a cue. */
    public static ExponentialSweep of(Cue.Sweep cue, int sampleRateHz) {
        return new ExponentialSweep(
                cue.startHz(), cue.endHz(), (double) cue.frames() / sampleRateHz);
    }

    /** L: seconds in which the frequency grows by the factor e. */
    public double growthSeconds() {
        return seconds / Math.log(endHz / startHz);
    }

    /** Phase in radians at a time in seconds from the start of the sweep. */
    public double phaseRadians(double t) {
        double l = growthSeconds();
        return 2 * Math.PI * startHz * l * Math.expm1(t / l);
    }

    /** Frequency in hertz at a time in seconds from the start of the sweep. */
    public double frequencyHz(double t) {
        return startHz * Math.exp(t / growthSeconds());
    }

    /** Time in seconds from the start of the sweep at which a frequency in hertz passes. */
    public double timeSeconds(double frequencyHz) {
        return growthSeconds() * Math.log(frequencyHz / startHz);
    }
}
