package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

/**
 * A rise or dip of the head's low-frequency response (contour effect), a peaking filter.
 *
 * @param frequencyHz centre, 10 to 2000 Hz at the nominal speed
 * @param gainDb gain at the centre, −20 to 20 dB
 * @param q sharpness, 0.2 to 20; default 1
 */
public record HeadBumpSpec(Double frequencyHz, Double gainDb, Double q) {

    /** Checks the limits and fills in defaults. */
    public HeadBumpSpec {
        given("frequencyHz", frequencyHz);
        given("gainDb", gainDb);
        within("frequencyHz", frequencyHz, 10, 2000, "Hz");
        within("gainDb", gainDb, -20, 20, "dB");
        q = within("q", orElse(q, 1.0), 0.2, 20, "");
    }
}
