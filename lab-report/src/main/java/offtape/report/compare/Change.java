package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Aim;

/**
 * A figure in two sessions.
 *
 * @param name what it is
 * @param channel {@code left} or {@code right}, or null of a figure of the whole machine
 * @param signed whether its plus sign says something
 * @param aim which way is better
 * @param before in the first session
 * @param after in the second session
 * @param repeatability by how much two measurings of the same unchanged machine differ, expanded
 *     (95 %), in the unit of the figure; null if that is not known
 */
public record Change(
        String name,
        @JsonInclude(JsonInclude.Include.NON_NULL) String channel,
        @JsonIgnore boolean signed,
        @JsonIgnore Aim aim,
        Quantity before,
        Quantity after,
        @JsonInclude(JsonInclude.Include.NON_NULL) Double repeatability) {

    private static final Sentences SAID = Sentences.near(Change.class);

    /** What became of a figure. */
    public enum Direction {
        /** It is better. */
        @JsonProperty("better")
        BETTER,
        /** It is worse. */
        @JsonProperty("worse")
        WORSE,
        /** It differs by no more than chance may bring about. */
        @JsonProperty("unclear")
        UNCLEAR,
        /** It is not known in both sessions. */
        @JsonProperty("unknown")
        UNKNOWN
    }

    /** Its name and channel. */
    @JsonIgnore
    public String label() {
        return channel == null ? name : name + ", " + channel;
    }

    /** Whether there is a difference to tell. */
    @JsonIgnore
    public boolean isKnown() {
        return before.isKnown() && after.isKnown() && before.unit().equals(after.unit());
    }

    /**
     * After less before. The uncertainties, taken as independent, add as squares (JCGM 100, clause
     * 5.1.2); where measuring again scatters more than that, its scatter counts, of which they are
     * a part.
     */
    @JsonProperty
    public Quantity difference() {
        if (!isKnown()) {
            return Quantity.unknown(SAID.say("not-in-both"));
        }
        double stated = Math.hypot(before.uncertainty(), after.uncertainty());
        double scatter = repeatability == null ? 0 : repeatability;
        return Quantity.known(
                after.value() - before.value(), after.unit(), Math.max(stated, scatter));
    }

    /** Whether the difference is larger than its uncertainty. */
    @JsonIgnore
    public boolean isClear() {
        Quantity d = difference();
        return d.isKnown() && Math.abs(d.value()) > d.uncertainty();
    }

    /**
     * What became of it. A figure that is best at nought and went through it is better or worse by
     * what its distance from there changed.
     */
    @JsonProperty
    public Direction direction() {
        if (!isKnown()) {
            return Direction.UNKNOWN;
        }
        double gain = aim.gain(before.value(), after.value());
        if (!isClear() || Math.abs(gain) <= difference().uncertainty()) {
            return Direction.UNCLEAR;
        }
        return gain > 0 ? Direction.BETTER : Direction.WORSE;
    }
}
