package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import offtape.core.transport.CaptureMode;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceShare;

/** What the reader should know of an interface that was taken out. */
final class InterfaceNotes {

    /** A machine that is lined up returns the reference tone as it was sent, within this. */
    private static final double LEVEL_DB = 3;

    private InterfaceNotes() {}

    /**
     * By how much the reference tone comes back otherwise than in the loopback.
     *
     * @param channel {@code left} or {@code right}
     * @param db level in the session less that in the loopback
     */
    record LevelChange(String channel, double db) {}

    /**
     * All notes.
     *
     * @param mode the session's mode, or null
     */
    static List<HealthNote> of(
            KnownInterface known, InterfaceShare share, String mode, List<LevelChange> changes) {
        List<HealthNote> notes = new ArrayList<>();
        notes.add(
                new HealthNote(
                        "note",
                        "loopback-used",
                        "The interface as it measured itself in the recording of "
                                + known.use().madeAt()
                                + " was taken out of response, delay and noise; its distortion and"
                                + " crosstalk are in the uncertainties."
                                + (CaptureMode.REFERENCE_TAPE.key().equals(mode)
                                        ? " That loopback holds the interface's output as well, which"
                                                + " was not in use while this tape was replayed."
                                        : "")));
        String limits =
                share.entries().stream()
                        .filter(InterfaceShare.Entry::limits)
                        .map(InterfaceNotes::words)
                        .collect(Collectors.joining("; "));
        if (!limits.isEmpty()) {
            notes.add(
                    new HealthNote(
                            "warning",
                            "interface-limits",
                            "The interface itself limits what can be told of the machine: "
                                    + limits
                                    + ". Against its noise raise the level at its input, against its"
                                    + " distortion lower it, or use a better one."));
        }
        String levels =
                changes.stream()
                        .filter(c -> Math.abs(c.db()) > LEVEL_DB)
                        .map(c -> String.format(Locale.ROOT, "%+.1f dB %s", c.db(), c.channel()))
                        .collect(Collectors.joining(", "));
        if (!levels.isEmpty()) {
            notes.add(
                    new HealthNote(
                            "warning",
                            "interface-gain-changed",
                            "The reference tone comes back at another level than in the loopback ("
                                    + levels
                                    + "). If a gain of the interface was changed in between, make the"
                                    + " loopback again; the uncertainty of the noise allows for it."));
        }
        return notes;
    }

    private static String words(InterfaceShare.Entry entry) {
        String what = entry.figure() + (entry.channel() == null ? "" : ", " + entry.channel());
        return entry.sharePercent() == null
                ? String.format(Locale.ROOT, "%s (%.1f %s)", what, entry.own(), entry.unit())
                : String.format(
                        Locale.ROOT,
                        "%s (its own is %.0f %% of what was heard)",
                        what,
                        entry.sharePercent());
    }
}
