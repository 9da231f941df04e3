package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;

/**
 * A steady line of the tape's skew against the replay head: peak·sin(2π·f·s + phase), s the place
 * on the tape in seconds of the programme.
 *
 * @param frequencyHz 0.02 to 50 Hz
 * @param peakArcMinutes 0 to 60 arc minutes
 * @param phaseDegrees phase at the programme's first frame; default 0
 */
public record AzimuthWanderSpec(Double frequencyHz, Double peakArcMinutes, Double phaseDegrees) {

    private static final Sentences SAID = Sentences.near(AzimuthWanderSpec.class);

    /** Checks the limits and fills in defaults. */
    public AzimuthWanderSpec {
        given("frequencyHz", frequencyHz);
        given("peakArcMinutes", peakArcMinutes);
        within("frequencyHz", frequencyHz, 0.02, 50, "Hz");
        within("peakArcMinutes", peakArcMinutes, 0, 60, SAID.say("unit.arc-minutes"));
        phaseDegrees =
                within(
                        "phaseDegrees",
                        orElse(phaseDegrees, 0.0),
                        -360,
                        360,
                        SAID.say("unit.degrees"));
    }

    /** The skew at a place on the tape. */
    double arcMinutes(double programmeSeconds) {
        double turns = frequencyHz * programmeSeconds + phaseDegrees / 360;
        return peakArcMinutes * Math.sin(2 * Math.PI * turns);
    }
}
