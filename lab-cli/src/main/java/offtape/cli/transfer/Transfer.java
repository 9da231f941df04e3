package offtape.cli.transfer;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.cli.capture.StopSignal;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;

/**
 * Sends stems one after another. Each return and the log appear together as soon as the stem is
 * done, so that whatever ends the run costs no more than the stem that sounds.
 */
public final class Transfer {

    private final TransferPlan plan;
    private final OutputFolder folder;
    private final StopSignal stop;
    private final TransferListener listener;
    private final StemRun run;
    private TransferLog log;

    /**
     * A run.
     *
     * @param log of the folder so far
     */
    public Transfer(
            TransferPlan plan,
            StreamOpener devices,
            OutputFolder folder,
            TransferLog log,
            StopSignal stop,
            TransferListener listener) {
        this.plan = plan;
        this.folder = folder;
        this.log = log;
        this.stop = stop;
        this.listener = listener;
        this.run = new StemRun(plan, devices, folder, stop, listener);
    }

    /**
     * Sends stems until all are sent or the signal is given.
     *
     * @return what came of each that was looked at, those that were done before included
     * @throws offtape.cli.sound.SoundTroubleException if a device does not open or is lost
     */
    public List<TransferEntry> send(List<Stem> stems) {
        List<TransferEntry> ended = new ArrayList<>();
        for (Stem stem : stems) {
            TransferSettings settings = plan.settings(stem);
            Optional<TransferEntry> before = log.of(stem.output());
            if (!plan.isAgain() && before.isPresent() && isDone(before.get(), stem, settings)) {
                listener.skipped(stem);
                ended.add(before.get());
                continue;
            }
            TransferEntry entry = run.send(stem, settings);
            if (stop.isGiven()) {
                return ended;
            }
            log = log.with(entry);
            folder.write(TransferLog.FILE, log.bytes());
            folder.publish();
            listener.ended(entry);
            ended.add(entry);
        }
        return ended;
    }

    private boolean isDone(TransferEntry before, Stem stem, TransferSettings settings) {
        Path there = folder.directory().resolve(stem.output());
        return before.isDone()
                && stem.sha256().equals(before.sha256())
                && settings.equals(before.settings())
                && Files.isRegularFile(there)
                && Sha256.ofFile(there).equals(before.returnSha256());
    }
}
