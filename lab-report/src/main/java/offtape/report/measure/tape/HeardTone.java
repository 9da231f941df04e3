package offtape.report.measure.tape;

import java.util.List;
import offtape.core.unit.Quantity;

/**
 * A steady tone and its figures, before anything is known of what it should be.
 *
 * @param fromSeconds where it begins
 * @param toSeconds where it ends
 * @param hz its mean frequency
 * @param hzUncertainty expanded, k = 2
 * @param levels dB re a full-scale sine, one a channel
 * @param difference dB, right re left
 * @param phase how the channels stand to each other; null if not both hold the tone
 * @param leftOutSeconds what is not in the levels
 */
record HeardTone(
        double fromSeconds,
        double toSeconds,
        double hz,
        double hzUncertainty,
        List<Quantity> levels,
        Quantity difference,
        Phase phase,
        double leftOutSeconds) {

    /**
     * The right channel against the left one.
     *
     * @param radians mean phase, −π to π; below 0 if the right channel is late by less than half a
     *     period
     * @param standard its standard uncertainty
     * @param wander mean square of the phase about its mean, the noise's share taken out
     * @param wanderUncertainty expanded uncertainty of that mean square
     */
    record Phase(double radians, double standard, double wander, double wanderUncertainty) {}

    /** How long it lasts. */
    double seconds() {
        return toSeconds - fromSeconds;
    }

    /** The highest level of its channels, dB re a full-scale sine. */
    double loudestDb() {
        return levels.stream()
                .filter(Quantity::isKnown)
                .mapToDouble(Quantity::value)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
    }
}
