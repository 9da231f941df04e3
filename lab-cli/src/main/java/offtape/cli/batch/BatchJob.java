package offtape.cli.batch;

import java.nio.file.Path;
import offtape.report.batch.BatchRow;

/** What is done to each return; called from several threads at once. */
public interface BatchJob {

    /** Size of the larger of the return's file and its programme's sound, bytes; 0 if not known. */
    long bytes(BatchEntry entry);

    /**
     * Measures a return, unless its session is there.
     *
     * @param session where its folder lies
     * @return its row
     * @throws RuntimeException if it cannot be done; others go on
     */
    BatchRow done(BatchEntry entry, Path session);
}
