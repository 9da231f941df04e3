package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.within;

/**
 * What poor erasure leaves of an earlier recording under the new one: the same programme, recorded
 * at another place of the tape by the same machine. Highs are erased better than lows, by 6 dB an
 * octave above 1 kHz (common practice, no source).
 *
 * @param levelDb what is left of a low tone that was at reference, dB re reference, −80 to −10 dB
 * @param shiftSeconds by how much later along the tape the earlier recording lies, −600 to 600 s of
 *     the programme, to the nearest of its frames; what reaches beyond an end of the programme
 *     comes in at the other. Default 0
 */
public record ResidueSpec(Double levelDb, double shiftSeconds) {

    /** Corner of the first-order fall of what is left. */
    public static final double CORNER_HZ = 1000;

    /** Checks the limits. */
    public ResidueSpec {
        given("levelDb", levelDb);
        within("levelDb", levelDb, -80, -10, "dB");
        within("shiftSeconds", shiftSeconds, -600, 600, "s");
    }
}
