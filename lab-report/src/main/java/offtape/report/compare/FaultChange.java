package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import offtape.report.fault.Likelihood;

/**
 * A fault in two sessions. On the other channel it is another fault.
 *
 * @param code its short stable name
 * @param name what the trade calls it
 * @param channel {@code left} or {@code right}, or null if it is no matter of one channel
 * @param before how likely the first session makes it, 0 to 1; null if that does not name it, which
 *     is under {@link Likelihood#TOLD} if it was looked for there
 * @param after the same of the second session
 * @param outcome what became of it
 * @param reason why that cannot be told, a sentence, or null if it can
 */
public record FaultChange(
        String code,
        String name,
        @JsonInclude(JsonInclude.Include.NON_NULL) String channel,
        Double before,
        Double after,
        Outcome outcome,
        @JsonInclude(JsonInclude.Include.NON_NULL) String reason) {

    /** What became of a fault from the first session to the second. */
    public enum Outcome {
        /** Likely before, not likely enough to be told after. */
        @JsonProperty("went")
        WENT,
        /** Less likely than before, but possible in one of the two. */
        @JsonProperty("may-have-gone")
        MAY_HAVE_GONE,
        /** Not likely enough to be told before, likely after. */
        @JsonProperty("came")
        CAME,
        /** More likely than before, but possible in one of the two. */
        @JsonProperty("may-have-come")
        MAY_HAVE_COME,
        /** Likely in both. */
        @JsonProperty("stayed")
        STAYED,
        /** Possible in both and likely in neither. */
        @JsonProperty("may-have-stayed")
        MAY_HAVE_STAYED,
        /** One of the sessions could not show it. */
        @JsonProperty("cannot-be-told")
        CANNOT_BE_TOLD
    }

    /** A fault that both sessions could show. */
    static FaultChange told(String code, String name, String channel, Double before, Double after) {
        return new FaultChange(code, name, channel, before, after, outcome(before, after), null);
    }

    private static Outcome outcome(Double before, Double after) {
        int first = zone(before);
        int second = zone(after);
        if (first == second) {
            return first == 2 ? Outcome.STAYED : Outcome.MAY_HAVE_STAYED;
        }
        boolean less = second < first;
        if (Math.abs(first - second) == 2) {
            return less ? Outcome.WENT : Outcome.CAME;
        }
        return less ? Outcome.MAY_HAVE_GONE : Outcome.MAY_HAVE_COME;
    }

    /** 2 likely, 1 possible, 0 not told. */
    private static int zone(Double likelihood) {
        if (likelihood == null || likelihood < Likelihood.TOLD) {
            return 0;
        }
        return likelihood < Likelihood.LIKELY ? 1 : 2;
    }

    /** How likely the more likely one is. */
    @JsonIgnore
    public double most() {
        return Math.max(before == null ? 0 : before, after == null ? 0 : after);
    }

    /** Its name and channel. */
    @JsonIgnore
    public String label() {
        return channel == null ? name : name + " (" + channel + ")";
    }
}
