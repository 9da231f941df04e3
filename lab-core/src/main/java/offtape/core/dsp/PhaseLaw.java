package offtape.core.dsp;

import java.util.function.DoubleUnaryOperator;

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

    /**
     * A carrier whose frequency changes smoothly, such as a sweep. Between exact phases every 32
     * values the phase is a parabola: for an exponential sweep at 20 kHz that takes 1.7 s for a
     * factor e, at 48 kHz, that leaves (2π · 20 000 / 1.7²) · (16 / 48 000)³ · 0.064 = 1e-7 rad.
     *
     * @param phaseRadians phase over the time of the recording
     */
    static PhaseLaw smooth(DoubleUnaryOperator phaseRadians) {
        return new SmoothPhase(phaseRadians);
    }
}
