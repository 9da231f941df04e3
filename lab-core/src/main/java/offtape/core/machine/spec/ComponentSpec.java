package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

import offtape.core.standard.TransportGeometry;

/**
 * A steady line of the speed deviation: peak·sin(2π·f·t + phase), t from the start of the
 * programme. Its rate is given either directly or by the rotating part's diameter, f = v/(π·D).
 *
 * @param name the part it comes from, or null
 * @param frequencyHz 0.02 to 500 Hz, or null if the diameter is given
 * @param diameterMm 1 to 500 mm, or null if the frequency is given
 * @param peakPercent peak deviation, 0 to 10 %
 * @param phaseDegrees phase at the programme's first frame in the pass that reads; default 0
 * @param recordPhaseDegrees phase in the pass that wrote ({@code two-pass} only); where absent it
 *     is drawn from the seed
 */
public record ComponentSpec(
        String name,
        Double frequencyHz,
        Double diameterMm,
        Double peakPercent,
        Double phaseDegrees,
        Double recordPhaseDegrees) {

    /** Checks the limits and fills in defaults. */
    public ComponentSpec {
        withinIfGiven("frequencyHz", frequencyHz, 0.02, 500, "Hz");
        withinIfGiven("diameterMm", diameterMm, 1, 500, "mm");
        require(
                (frequencyHz == null) != (diameterMm == null),
                "Give either \"frequencyHz\" or \"diameterMm\".");
        require(peakPercent != null, "\"peakPercent\" is missing.");
        within("peakPercent", peakPercent, 0, 10, "%");
        phaseDegrees = within("phaseDegrees", orElse(phaseDegrees, 0.0), -360, 360, "degrees");
        withinIfGiven("recordPhaseDegrees", recordPhaseDegrees, -360, 360, "degrees");
    }

    /** The rate in hertz at a tape speed in millimetres per second. */
    public double rateHz(double tapeSpeedMmPerS) {
        return frequencyHz != null
                ? frequencyHz
                : TransportGeometry.rotationHz(tapeSpeedMmPerS, diameterMm);
    }
}
