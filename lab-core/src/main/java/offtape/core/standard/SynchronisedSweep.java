package offtape.core.standard;

/**
 * The exponential sweep f(t) = f1·exp(t/L) and where its harmonics fall after deconvolution: A.
 * Farina, Simultaneous measurement of impulse response and distortion with a swept-sine technique,
 * AES 108 (2000); synchronisation after A. Novak, P. Lotton, L. Simon, J. Audio Eng. Soc. 63
 * (2015), 786-798.
 *
 * @param startHz frequency at the start, f1
 * @param endHz frequency at the end, f2, above f1
 * @param rateSeconds L, the time in which the frequency rises e-fold
 */
public record SynchronisedSweep(double startHz, double endHz, double rateSeconds) {

    /**
     * Checks the frequencies and the rate.
     *
     * @throws IllegalArgumentException unless 0 &lt; start &lt; end and the rate is above 0
     */
    public SynchronisedSweep {
        if (!(startHz > 0) || !(endHz > startHz) || !(rateSeconds > 0)) {
            throw new IllegalArgumentException(
                    "no sweep from " + startHz + " Hz to " + endHz + " Hz");
        }
    }

    /**
     * The sweep whose length is nearest to the wanted one with L·f1 a whole number, so that the
     * harmonics start in phase.
     *
     * @param wantedSeconds length, above 0
     */
    public static SynchronisedSweep near(double startHz, double endHz, double wantedSeconds) {
        double cycles = startHz * wantedSeconds / Math.log(endHz / startHz);
        return new SynchronisedSweep(startHz, endHz, Math.max(1, Math.rint(cycles)) / startHz);
    }

    /** L·f1, a whole number for a synchronised sweep. */
    public double cycles() {
        return rateSeconds * startHz;
    }

    /** Length in seconds, L·ln(f2/f1). */
    public double durationSeconds() {
        return secondsAt(endHz);
    }

    /** When the sweep passes a frequency in hertz above 0, seconds from its start. */
    public double secondsAt(double frequencyHz) {
        return rateSeconds * Math.log(frequencyHz / startHz);
    }

    /** The frequency in hertz at a time in seconds from the start. */
    public double frequencyHz(double seconds) {
        return startHz * Math.exp(seconds / rateSeconds);
    }

    /**
     * How far ahead of the linear response a harmonic arrives, seconds: L·ln n.
     *
     * @param harmonic number of the harmonic, 1 the fundamental
     */
    public double leadSeconds(int harmonic) {
        return rateSeconds * Math.log(harmonic);
    }
}
