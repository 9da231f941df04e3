package offtape.core.transport;

import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * A belt. It goes round once in its length over the speed of its pulley's rim.
 *
 * @param name for people; default "belt"
 * @param lengthMm its length, stretched as it runs, 20 to 2000 mm, or null
 * @param pulleyDiameterMm a pulley that it runs on, 1 to 300 mm, or null
 * @param pulleyRotationHz turns a second of that pulley, 0.1 to 200; null if it sits on the shaft
 *     of the capstan
 */
public record Belt(String name, Double lengthMm, Double pulleyDiameterMm, Double pulleyRotationHz) {

    private static final Sentences SAID = Sentences.near(Belt.class);

    /** Checks the limits. */
    public Belt {
        name = Range.name(name, SAID.say("part.belt"));
        Range.within("lengthMm", lengthMm, 20, 2000, "mm");
        Range.within("pulleyDiameterMm", pulleyDiameterMm, 1, 300, "mm");
        Range.within("pulleyRotationHz", pulleyRotationHz, 0.1, 200, "Hz");
    }
}
