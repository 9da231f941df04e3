package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import offtape.reference.TransportMotion;

/**
 * A motion measured on a real machine, as a table of how late the return comes: from a file, or one
 * of the recorded motions that come with Offtape.
 *
 * @param csv file of two columns, seconds (rising) and microseconds late, below a line of headings;
 *     relative paths count from the file that names them; or null
 * @param recorded name of a motion that comes with Offtape ({@link TransportMotion#NAMES}), or null
 * @param scale factor on the microseconds, −100 to 100; default 1
 */
public record MotionFileSpec(String csv, String recorded, Double scale) {

    /** Checks the limits and fills in defaults. */
    public MotionFileSpec {
        require((csv == null) != (recorded == null), "Give either \"csv\" or \"recorded\".");
        require(csv == null || !csv.isBlank(), "\"csv\" is empty.");
        require(
                recorded == null || TransportMotion.NAMES.contains(recorded),
                "\"recorded\" must be one of " + String.join(", ", TransportMotion.NAMES) + ".");
        scale = within("scale", orElse(scale, 1.0), -100, 100, "");
    }
}
