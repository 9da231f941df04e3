package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;

/**
 * A line of the speed deviation that turns with a reel, so that its rate v/(2π·r) moves as the pack
 * grows or shrinks.
 *
 * @param radiusMm radius of the pack at the programme's first frame, 5 to 200 mm
 * @param peakPercent peak deviation, 0 to 10 %
 * @param phaseDegrees phase at the programme's first frame; default 0
 */
public record ReelSpec(Double radiusMm, Double peakPercent, Double phaseDegrees) {

    private static final Sentences SAID = Sentences.near(ReelSpec.class);

    /** Checks the limits and fills in defaults. */
    public ReelSpec {
        given("radiusMm", radiusMm);
        given("peakPercent", peakPercent);
        within("radiusMm", radiusMm, 5, 200, "mm");
        within("peakPercent", peakPercent, 0, 10, "%");
        phaseDegrees =
                within(
                        "phaseDegrees",
                        orElse(phaseDegrees, 0.0),
                        -360,
                        360,
                        SAID.say("unit.degrees"));
    }
}
