package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import offtape.cli.capture.CaptureProgress;
import offtape.cli.terminal.Terminal;
import offtape.cli.transfer.Stem;
import offtape.cli.transfer.TransferEntry;
import offtape.cli.transfer.TransferListener;

/** A transfer in words, while it goes on and at its end. */
final class TransferWords implements TransferListener {

    private final Terminal terminal;
    private final int all;
    private int number;

    TransferWords(Terminal terminal, int all) {
        this.terminal = terminal;
        this.all = all;
    }

    /** What does not agree in a stem's file. */
    void notes(Stem stem) {
        stem.notes().forEach(n -> terminal.message("Mind: " + stem.file() + ": " + n + "."));
    }

    @Override
    public void begins(Stem stem, double driveDb) {
        number++;
        long seconds = Math.round((double) stem.frames() / stem.sampleRateHz());
        terminal.message(
                String.format(
                        Locale.ROOT,
                        "[%d/%d] %s, %d:%02d, drive %+.1f dB",
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
        terminal.message(
                String.format(
                        Locale.ROOT,
                        "[%d/%d] %s is done already (--again sends it again)",
                        number,
                        all,
                        stem.file().getFileName()));
    }

    @Override
    public void repeats(Stem stem) {
        terminal.message(
                "The computer was late and sound was lost; "
                        + stem.file().getFileName()
                        + " is sent once more.");
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
            String begin = entry.path() == null ? entry.stem() + ": " : "Mind: ";
            terminal.message(begin + entry.message());
        }
    }

    private static String path(TransferEntry entry) {
        StringBuilder channels = new StringBuilder();
        for (TransferEntry.Channel c : entry.path().channels()) {
            channels.append(
                    String.format(
                            Locale.ROOT,
                            "%s%+.2f dB%s",
                            channels.isEmpty() ? "" : " and ",
                            c.gainDb(),
                            c.polarity().equals("inverted") ? " inverted" : ""));
        }
        return String.format(
                Locale.ROOT,
                "      back after %.2f ms, drift %+.1f ppm, path %s, peak %s, was %s",
                entry.path().delayMs(),
                entry.path().driftPpm(),
                channels,
                dbfs(entry.levels().peakOutDbfs()),
                dbfs(entry.levels().peakInDbfs()));
    }

    private static String dbfs(Double db) {
        return db == null ? "silence" : String.format(Locale.ROOT, "%.1f dBFS", db);
    }

    /** What came of all of them. */
    void end(List<TransferEntry> ended, Path out, boolean isInterrupted) {
        long done = ended.stream().filter(TransferEntry::isDone).count();
        terminal.message(
                String.format(
                        Locale.ROOT,
                        "%d of %d stems are back in %s.%s",
                        done,
                        all,
                        out,
                        isInterrupted
                                ? " Broken off; the same command goes on with the rest."
                                : ""));
        List<String> missing =
                ended.stream()
                        .filter(e -> !e.isDone())
                        .map(e -> e.stem() + " (" + e.outcome().word() + ")")
                        .toList();
        if (!missing.isEmpty()) {
            terminal.error(
                    "Not brought back as it should be: "
                            + String.join(", ", missing)
                            + ". Set right what is said of each above, and give the same command"
                            + " again: stems that are done are skipped.");
        }
    }
}
