package offtape.core.transport;

import static offtape.core.json.Range.require;

import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * A reel or the hub of a cassette. With both radii its line may lie anywhere between the two rates;
 * with the pack's alone that is the radius during the tone.
 *
 * @param hubRadiusMm radius of the empty hub, 5 to 200 mm, or null
 * @param packRadiusMm outer radius of the pack, when full if the hub is given, 5 to 200 mm, or null
 */
public record Reel(Double hubRadiusMm, Double packRadiusMm) {

    private static final Sentences SAID = Sentences.near(Reel.class);

    /** Checks the limits. */
    public Reel {
        Range.within("hubRadiusMm", hubRadiusMm, 5, 200, "mm");
        Range.within("packRadiusMm", packRadiusMm, 5, 200, "mm");
        require(hubRadiusMm == null || packRadiusMm != null, SAID.say("reel.no-pack"));
        require(hubRadiusMm == null || hubRadiusMm <= packRadiusMm, SAID.say("reel.hub-too-large"));
    }

    /** Smallest radius the pack can have, mm, or null if nothing is known. */
    Double leastRadiusMm() {
        return hubRadiusMm == null ? packRadiusMm : hubRadiusMm;
    }
}
