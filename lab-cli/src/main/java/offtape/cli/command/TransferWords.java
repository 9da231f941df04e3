package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.cli.capture.CaptureProgress;
import offtape.cli.terminal.Terminal;
import offtape.cli.transfer.Stem;
import offtape.cli.transfer.TransferEntry;
import offtape.cli.transfer.TransferListener;

/** A transfer in words, while it goes on and at its end. */
final class TransferWords implements TransferListener {

    private static final String INDENT = "      ";

    private final Terminal terminal;
    private final Speech speech;
    private final int all;
    private int number;

    TransferWords(Terminal terminal, int all) {
        this.terminal = terminal;
        this.speech = Speech.of(terminal);
        this.all = all;
    }

    /** What does not agree in a stem's file. */
    void notes(Stem stem) {
        stem.notes()
                .forEach(
                        n ->
                                terminal.message(
                                        speech.say("transfer.note", stem.file(), speech.told(n))));
    }

    @Override
    public void begins(Stem stem, double driveDb) {
        number++;
        long seconds = Math.round((double) stem.frames() / stem.sampleRateHz());
        terminal.message(
                speech.say(
                        "transfer.begins",
                        number,
                        all,
                        stem.file().getFileName(),
                        seconds / 60,
                        seconds % 60,
                        driveDb));
    }

    @Override
    public void skipped(Stem stem) {
        number++;
        terminal.message(speech.say("transfer.skipped", number, all, stem.file().getFileName()));
    }

    @Override
    public void repeats(Stem stem) {
        terminal.message(speech.say("transfer.repeats", stem.file().getFileName()));
    }

    @Override
    public CaptureProgress progress() {
        return new CaptureWords(terminal)::progress;
    }

    @Override
    public void ended(TransferEntry entry) {
        if (entry.path() != null) {
            terminal.message(path(entry));
        }
        if (entry.message() != null) {
            String message = speech.told(entry.message());
            terminal.message(
                    entry.path() == null
                            ? speech.say("transfer.stem", entry.stem(), message)
                            : speech.say("transfer.mind", message));
        }
    }

    private String path(TransferEntry entry) {
        List<String> channels = new ArrayList<>();
        for (TransferEntry.Channel c : entry.path().channels()) {
            channels.add(
                    speech.say(
                            c.polarity().equals("inverted") ? "transfer.inverted" : "transfer.gain",
                            c.gainDb()));
        }
        return INDENT
                + speech.say(
                        "transfer.back",
                        entry.path().delayMs(),
                        entry.path().driftPpm(),
                        String.join(" " + speech.say("transfer.and") + " ", channels),
                        dbfs(entry.levels().peakOutDbfs()),
                        dbfs(entry.levels().peakInDbfs()));
    }

    private String dbfs(Double db) {
        return db == null ? speech.say("transfer.silence") : speech.say("transfer.dbfs", db);
    }

    /** What came of all of them. */
    void end(List<TransferEntry> ended, Path out, boolean isInterrupted) {
        long done = ended.stream().filter(TransferEntry::isDone).count();
        terminal.message(
                speech.say(
                        isInterrupted ? "transfer.broken-off" : "transfer.done", done, all, out));
        List<String> missing =
                ended.stream()
                        .filter(e -> !e.isDone())
                        .map(
                                e ->
                                        speech.say(
                                                "transfer.stem-outcome",
                                                e.stem(),
                                                speech.say(
                                                        "transfer.outcome-" + e.outcome().word())))
                        .toList();
        if (!missing.isEmpty()) {
            terminal.error(speech.say("transfer.missing", String.join(", ", missing)));
        }
    }
}
