package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

/**
 * The reels' part in the speed deviation.
 *
 * @param supply the reel that empties, or null
 * @param takeUp the reel that fills, or null
 * @param tapeThicknessMicrometres 5 to 100 µm; default 35 (long-play tape; common practice, no
 *     source)
 */
public record ReelsSpec(ReelSpec supply, ReelSpec takeUp, Double tapeThicknessMicrometres) {

    /** Checks the limits and fills in defaults. */
    public ReelsSpec {
        tapeThicknessMicrometres =
                within(
                        "tapeThicknessMicrometres",
                        orElse(tapeThicknessMicrometres, 35.0),
                        5,
                        100,
                        "µm");
    }
}
