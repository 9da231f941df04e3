package offtape.report.batch;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;

/**
 * Many returns, in the order of their list.
 *
 * @param format always {@link #FORMAT}
 * @param version always 1
 */
@JsonPropertyOrder({"format", "version", "returns"})
public record BatchSummary(String format, int version, List<BatchRow> returns) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-batch";

    /** Copies the list. */
    public BatchSummary {
        returns = List.copyOf(returns);
    }

    /** A summary of these rows. */
    public static BatchSummary of(List<BatchRow> rows) {
        return new BatchSummary(FORMAT, 1, rows);
    }

    /** How many returns stand so. */
    public long count(BatchState state) {
        return returns.stream().filter(r -> r.state() == state).count();
    }

    /** Whether a return fails a limit beyond doubt. */
    @JsonIgnore
    public boolean isLimitFailed() {
        return returns.stream().anyMatch(r -> r.limitsFailed() != null && r.limitsFailed() > 0);
    }
}
