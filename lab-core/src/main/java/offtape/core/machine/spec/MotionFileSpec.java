package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

/**
 * A motion measured on a real machine, as a table of how late the return comes.
 *
 * @param csv file of two columns, seconds (rising) and microseconds late, below a line of headings;
 *     relative paths count from the file that names them
 * @param scale factor on the microseconds, −100 to 100; default 1
 */
public record MotionFileSpec(String csv, Double scale) {

    /** Checks the limits and fills in defaults. */
    public MotionFileSpec {
        require(csv != null && !csv.isBlank(), "\"csv\" is missing.");
        scale = within("scale", orElse(scale, 1.0), -100, 100, "");
    }
}
