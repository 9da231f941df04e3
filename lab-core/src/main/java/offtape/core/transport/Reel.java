package offtape.core.transport;

import static offtape.core.json.Range.require;

import offtape.core.json.Range;

/**
 * A reel or the hub of a cassette. With both radii its line may lie anywhere between the two rates;
 * with the pack's alone that is the radius during the tone.
 *
 * @param hubRadiusMm radius of the empty hub, 5 to 200 mm, or null
 * @param packRadiusMm outer radius of the pack, when full if the hub is given, 5 to 200 mm, or null
 */
public record Reel(Double hubRadiusMm, Double packRadiusMm) {

    /** Checks the limits. */
    public Reel {
        Range.within("hubRadiusMm", hubRadiusMm, 5, 200, "mm");
        Range.within("packRadiusMm", packRadiusMm, 5, 200, "mm");
        require(
                hubRadiusMm == null || packRadiusMm != null,
                "\"packRadiusMm\" is missing: with the hub alone the line of the reel could lie"
                        + " anywhere below it. Give the radius of the full pack too.");
        require(
                hubRadiusMm == null || hubRadiusMm <= packRadiusMm,
                "\"hubRadiusMm\" is larger than \"packRadiusMm\"; the pack lies on the hub.");
    }

    /** Smallest radius the pack can have, mm, or null if nothing is known. */
    Double leastRadiusMm() {
        return hubRadiusMm == null ? packRadiusMm : hubRadiusMm;
    }
}
