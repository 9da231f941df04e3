package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

/**
 * A line of the speed deviation that turns with a reel, so that its rate v/(2π·r) moves as the pack
 * grows or shrinks.
 *
 * @param radiusMm radius of the pack at the programme's first frame, 5 to 200 mm
 * @param peakPercent peak deviation, 0 to 10 %
 * @param phaseDegrees phase at the programme's first frame; default 0
 */
public record ReelSpec(Double radiusMm, Double peakPercent, Double phaseDegrees) {

    /** Checks the limits and fills in defaults. */
    public ReelSpec {
        require(radiusMm != null, "\"radiusMm\" is missing.");
        require(peakPercent != null, "\"peakPercent\" is missing.");
        within("radiusMm", radiusMm, 5, 200, "mm");
        within("peakPercent", peakPercent, 0, 10, "%");
        phaseDegrees = within("phaseDegrees", orElse(phaseDegrees, 0.0), -360, 360, "degrees");
    }
}
