package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import offtape.core.unit.Quantity;

/**
 * What erasing leaves of a tone on one channel.
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz of the tone as it was heard
 * @param toneDbfs its level where it was not erased, dB re a full-scale sine; null if it is not
 *     heard on this channel
 * @param erasure by how much it is weaker where it was, dB; unknown if what is left lies under the
 *     noise, or if there is no tone
 * @param atLeastDb in the first case it is weaker by at least this much, dB
 */
public record Erasure(
        String channel,
        double frequencyHz,
        @JsonInclude(JsonInclude.Include.NON_NULL) Double toneDbfs,
        Quantity erasure,
        @JsonInclude(JsonInclude.Include.NON_NULL) Double atLeastDb) {}
