package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * What to do with the machine.
 *
 * @param decision {@code keep}, {@code service}, {@code let-go}, or null if not decided
 * @param reason why there is no decision, or null if there is one
 * @param because the grounds of the decision, plain sentences
 * @param checks each quantity against its limit
 * @param faults likely causes, most likely first
 */
public record Verdict(
        String decision,
        @JsonInclude(JsonInclude.Include.NON_NULL) String reason,
        List<String> because,
        List<Check> checks,
        List<Fault> faults) {

    /** Copies the lists so that the record cannot change. */
    public Verdict {
        because = List.copyOf(because);
        checks = List.copyOf(checks);
        faults = List.copyOf(faults);
    }

    /** No limits were applied: the decision is left open. */
    public static Verdict open(String reason) {
        return new Verdict(null, reason, List.of(), List.of(), List.of());
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

    /**
     * A likely cause.
     *
     * @param code short stable name
     * @param likelihood 0 to 1
     * @param evidence the figures that speak for it
     * @param remedy first thing to try
     * @param caution what to beware of
     */
    public record Fault(
            String code, double likelihood, List<String> evidence, String remedy, String caution) {}
}
