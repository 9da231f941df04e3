package offtape.cli.batch;

import java.util.List;

/**
 * What a list of returns says.
 *
 * @param entries each return once, with the name of its session
 * @param notes what was passed over, a sentence each
 */
public record ListedReturns(List<BatchEntry> entries, List<String> notes) {

    /** Copies the lists. */
    public ListedReturns {
        entries = List.copyOf(entries);
        notes = List.copyOf(notes);
    }
}
