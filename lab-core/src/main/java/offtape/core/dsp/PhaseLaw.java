package offtape.core.dsp;

/** The phase of a carrier as a function of time. */
@FunctionalInterface
public interface PhaseLaw {

    /** Phase in radians at a time in seconds from the start of the recording. */
    double phaseRadians(double seconds);

    /**
     * Cosine and sine of the phase at evenly spaced times.
     *
     * @param startSeconds time of the first value
     * @param stepSeconds distance in time
     * @param cos receives the cosines; its length is the number of values
     * @param sin receives the sines, same length
     */
    default void fill(double startSeconds, double stepSeconds, double[] cos, double[] sin) {
        for (int i = 0; i < cos.length; i++) {
            double phase = phaseRadians(startSeconds + i * stepSeconds);
            cos[i] = Math.cos(phase);
            sin[i] = Math.sin(phase);
        }
    }

    /** A carrier of constant frequency in hertz, with phase 0 at time 0. */
    static PhaseLaw steady(double frequencyHz) {
        return new SteadyPhase(frequencyHz);
    }
}
