package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * Several replays of one recording.
 *
 * @param statement which figures of the session come from which replays, a plain sentence
 * @param readings one entry a replay, in the order they were given
 * @param highest of each reading
 * @param mean of each reading
 * @param spread highest less lowest of each reading
 * @param written what repeats with the tape
 * @param read what does not repeat: what a replay adds, on average over the replays
 * @param lines the strongest lines in both parts, strongest first
 * @param separatedSeconds length of tape that all replays hold and the parts come from, null if
 *     they were not separated
 * @param notes what else is to be known of the parts, plain sentences
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Passes(
        String statement,
        List<Pass> readings,
        PassFigures highest,
        PassFigures mean,
        PassFigures spread,
        PassParts written,
        PassParts read,
        List<PassLine> lines,
        Double separatedSeconds,
        List<String> notes) {

    /** Copies the lists so that the record cannot change. */
    public Passes {
        readings = List.copyOf(readings);
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }
}
