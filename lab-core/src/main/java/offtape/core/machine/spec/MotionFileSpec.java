package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;
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

    private static final Sentences SAID = Sentences.near(MotionFileSpec.class);

    /** Checks the limits and fills in defaults. */
    public MotionFileSpec {
        require((csv == null) != (recorded == null), SAID.say("motion.either"));
        require(csv == null || !csv.isBlank(), SAID.say("motion.empty"));
        require(
                recorded == null || TransportMotion.NAMES.contains(recorded),
                SAID.say("motion.recorded", String.join(", ", TransportMotion.NAMES)));
        scale = within("scale", orElse(scale, 1.0), -100, 100, "");
    }
}
