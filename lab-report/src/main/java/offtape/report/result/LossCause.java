package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Objects;
import offtape.core.unit.Quantity;

/**
 * One cause of loss.
 *
 * @param cause {@code spacing}, {@code gap}, {@code azimuth}, {@code gap-or-azimuth} (which one
 *     channel alone cannot tell apart), {@code thickness}, {@code equalisation} or {@code
 *     upper-edge}
 * @param quantity µm between tape and head; µm of the gap (optical length, 1/1.11 of the effective
 *     one); arc minutes, or µm of track width times tan α if the width is not known; µm of
 *     effective gap or of that product; µm of magnetised layer; dB of shelf at 10 kHz re 1 kHz; Hz
 *     of the −3 dB edge. Known only where the cause is needed to explain the curve
 * @param lessThan what it stays below (k = 2) if {@code quantity} is unknown; in {@code limitUnit};
 *     null otherwise and for edges
 * @param moreThan the same for edges, which lie above
 * @param limitUnit unit of the limit, or null if there is none
 * @param detail time constants of an equalisation, or null
 * @param shareDb what the simplest set lets it take, dB re 1 kHz, at the frequencies of the fit;
 *     empty if that set does without it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LossCause(
        String cause,
        Quantity quantity,
        Double lessThan,
        Double moreThan,
        String limitUnit,
        String detail,
        double[] shareDb) {

    /** Checks that it is one. */
    public LossCause {
        Objects.requireNonNull(cause, "cause");
    }
}
