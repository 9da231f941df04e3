package offtape.cli.batch;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.fault.Background;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchSummary;
import offtape.report.render.BatchCsv;

/**
 * Does all returns of a list, as many at once as there are processors and the heap bears. What one
 * gives does not depend on the others; one that is refused stops none. The summary is on disk after
 * each.
 */
public final class BatchRun {

    private static final Sentences SAID = Sentences.near(BatchRun.class);

    private final List<BatchEntry> entries;
    private final BatchJob job;
    private final OutputFolder folder;
    private final Terminal terminal;
    private final RowWords words;
    private final boolean verbose;
    private final HeapShare heap = new HeapShare(Runtime.getRuntime().maxMemory());
    private final List<BatchRow> rows = new ArrayList<>();
    private int finished;
    private int code = ExitCodes.DONE;
    private boolean summaryLost;

    /**
     * A run into a folder, which its owner commits afterwards.
     *
     * @param folder of the summary; the sessions lie below its place
     * @param verbose whether the trace of an internal fault is told
     */
    public BatchRun(
            List<BatchEntry> entries,
            BatchJob job,
            OutputFolder folder,
            Terminal terminal,
            boolean verbose) {
        this.entries = List.copyOf(entries);
        this.job = job;
        this.folder = folder;
        this.terminal = terminal;
        this.words = RowWords.on(terminal);
        this.verbose = verbose;
        entries.forEach(e -> rows.add(BatchRow.waiting(e.name(), e.written())));
    }

    /**
     * Does them.
     *
     * @param threads how many at once at most
     * @return the rows in the order of the list
     */
    public BatchSummary run(int threads) {
        // before anything is measured, so that a run that dies leaves a folder that is known as
        // ours
        write();
        folder.publish();
        ExecutorService workers = Executors.newFixedThreadPool(Math.min(threads, entries.size()));
        try {
            List<CompletableFuture<Void>> all = new ArrayList<>();
            for (int i = 0; i < entries.size(); i++) {
                int number = i;
                all.add(CompletableFuture.runAsync(() -> one(number), workers));
            }
            all.forEach(Background::result);
        } finally {
            workers.shutdown();
        }
        return summary();
    }

    /** The exit code of the worst that happened to a return: an internal fault is the worst. */
    public synchronized int code() {
        return code;
    }

    private void one(int number) {
        BatchEntry entry = entries.get(number);
        int share = heap.take(job.bytes(entry));
        try {
            finished(number, job.done(entry, session(entry)), ExitCodes.DONE);
        } catch (UnusableInputException e) {
            refused(number, e.getMessage(), e, ExitCodes.UNUSABLE_INPUT);
        } catch (RefusedOutputException e) {
            refused(number, e.getMessage(), e, ExitCodes.USAGE);
        } catch (RuntimeException | Error e) {
            String why =
                    e instanceof OutOfMemoryError
                            ? SAID.say("memory-used-up")
                            : SAID.say("internal-fault", e.getClass().getSimpleName());
            refused(number, why, e, ExitCodes.INTERNAL);
        } finally {
            heap.giveBack(share);
        }
    }

    private Path session(BatchEntry entry) {
        return folder.directory().resolve(entry.name());
    }

    private void refused(int number, String reason, Throwable why, int how) {
        if (verbose) {
            terminal.trace(why);
        }
        BatchEntry entry = entries.get(number);
        finished(number, BatchRow.refused(entry.name(), entry.written(), reason), how);
    }

    private synchronized void finished(int number, BatchRow row, int how) {
        rows.set(number, row);
        code = Math.max(code, how);
        finished++;
        terminal.message(words.line(finished, entries.size(), row));
        if (!summaryLost) {
            publish();
        }
    }

    private void publish() {
        try {
            write();
            folder.publish();
        } catch (RefusedOutputException e) {
            // the sessions are worth more than their summary, which the next run writes
            summaryLost = true;
            code = Math.max(code, ExitCodes.USAGE);
            terminal.error(terminal.told(e.getMessage()));
        }
    }

    private void write() {
        folder.write(BatchCsv.NAME, BatchCsv.of(summary()).getBytes(StandardCharsets.UTF_8));
    }

    private BatchSummary summary() {
        return BatchSummary.of(rows);
    }
}
