package offtape.core.transport;

import offtape.core.json.Range;

/**
 * A part on whose circumference the tape runs.
 *
 * @param name for people; only idlers need one
 * @param diameterMm where the tape runs, 0.5 to 200 mm, or null if not known
 */
public record Roller(String name, Double diameterMm) {

    /** Checks the limits. */
    public Roller {
        Range.within("diameterMm", diameterMm, 0.5, 200, "mm");
    }
}
