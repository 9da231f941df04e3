package offtape.cli.transfer;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * How a stem was sent; a stem that is done is sent again if any of it changes.
 *
 * @param driveDb by how much it was raised before the machine, which is taken back after it, dB
 * @param preEmphasisSha256 digest of the filter before the machine, or null
 * @param isFloat whether its return was to be written as 32-bit float
 * @param takenFrom channel from which a mono stem was taken back; null of a stereo stem
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TransferSettings(
        double driveDb,
        String preEmphasisSha256,
        @JsonProperty("float") boolean isFloat,
        String takenFrom) {}
