package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;

/**
 * What to do with the machine.
 *
 * @param decision {@code keep}, {@code service}, {@code let-go}, or null if not decided
 * @param reason why there is no decision, or null if there is one
 * @param because the grounds of the decision, plain sentences
 * @param checks each quantity against its limit
 * @param faults likely causes, most likely first
 * @param soundLikelihood how likely none of the known faults is there, 0 to 1, or null if they were
 *     not looked for
 * @param next what to do next, most useful first, plain sentences
 * @param cautions what to beware of in doing it, plain sentences
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Verdict(
        @JsonInclude String decision,
        String reason,
        List<String> because,
        List<Check> checks,
        List<Fault> faults,
        Double soundLikelihood,
        List<String> next,
        List<String> cautions) {

    /** Copies the lists so that the record cannot change. */
    public Verdict {
        because = List.copyOf(because);
        checks = List.copyOf(checks);
        faults = List.copyOf(faults);
        next = next == null ? List.of() : List.copyOf(next);
        cautions = cautions == null ? List.of() : List.copyOf(cautions);
    }

    /** No limits were applied: the decision is left open. */
    public static Verdict open(String reason) {
        return new Verdict(
                null, reason, List.of(), List.of(), List.of(), null, List.of(), List.of());
    }

    /**
     * A quantity held against a limit.
     *
     * @param quantity name of the quantity
     * @param value measured value
     * @param limit the limit, in words
     * @param outcome {@code pass}, {@code marginal}, {@code fail} or {@code unknown}
     * @param source where the limit comes from
     * @param unit of the value
     * @param uncertainty of the value, expanded, k = 2
     * @param wrongPercent chance that the outcome is wrong, percent
     * @param reason why it is unknown
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Check(
            String quantity,
            @JsonInclude(JsonInclude.Include.ALWAYS) Double value,
            String limit,
            String outcome,
            String source,
            String unit,
            Double uncertainty,
            Double wrongPercent,
            String reason) {}

    /** The same verdict with other likely causes. */
    public Verdict withFaults(List<Fault> found, Double sound) {
        return new Verdict(decision, reason, because, checks, found, sound, next, cautions);
    }

    /**
     * A likely cause.
     *
     * @param code short stable name
     * @param name what the trade calls it
     * @param channel {@code left}, {@code right}, or null if it is no matter of one channel
     * @param likelihood 0 to 1
     * @param evidence the figures that speak for it, plain sentences
     * @param unlike how it was told from what looks like it, plain sentences
     * @param remedy first thing to try
     * @param caution what to beware of, or null
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Fault(
            String code,
            String name,
            String channel,
            double likelihood,
            List<String> evidence,
            List<String> unlike,
            String remedy,
            @JsonInclude String caution) {

        /** Copies the lists so that the record cannot change. */
        public Fault {
            Objects.requireNonNull(code, "a fault has a code");
            evidence = List.copyOf(evidence);
            unlike = unlike == null ? List.of() : List.copyOf(unlike);
        }
    }
}
