package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceShare;

/** What the reader should know of an interface that was taken out. */
final class InterfaceNotes {

    private static final Sentences SAID = Sentences.near(InterfaceNotes.class);

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
        notes.add(new HealthNote("note", "loopback-used", used(known.use().madeAt(), mode)));
        List<InterfaceShare.Entry> limits =
                share.entries().stream().filter(InterfaceShare.Entry::limits).toList();
        if (!limits.isEmpty()) {
            notes.add(new HealthNote("warning", "interface-limits", limited(limits)));
        }
        String levels =
                changes.stream()
                        .filter(c -> Math.abs(c.db()) > LEVEL_DB)
                        .map(c -> SAID.say("gain-" + c.channel(), c.db()))
                        .collect(Collectors.joining(", "));
        if (!levels.isEmpty()) {
            notes.add(
                    new HealthNote(
                            "warning", "interface-gain-changed", SAID.say("gain-changed", levels)));
        }
        return notes;
    }

    private static String used(String madeAt, String mode) {
        String used = SAID.say("loopback-used", madeAt);
        return CaptureMode.REFERENCE_TAPE.key().equals(mode)
                ? used + " " + SAID.say("loopback-output")
                : used;
    }

    private static String limited(List<InterfaceShare.Entry> limits) {
        List<String> parts = new ArrayList<>();
        parts.add(SAID.say("limits"));
        for (int i = 0; i < limits.size(); i++) {
            parts.add(limit(limits.get(i), i + 1 < limits.size() ? "more" : "last"));
        }
        parts.add(SAID.say("limits-remedy"));
        return String.join(" ", parts);
    }

    /**
     * One figure that is limited; only one of a channel can be without a share.
     *
     * @param place {@code last} or, if others follow, {@code more}
     */
    private static String limit(InterfaceShare.Entry entry, String place) {
        if (entry.sharePercent() == null) {
            String key = "limit-value-" + entry.channel() + "-" + place;
            return SAID.say(key, entry.figure(), entry.own());
        }
        String what =
                entry.channel() == null
                        ? entry.figure()
                        : SAID.say("figure-" + entry.channel(), entry.figure());
        return SAID.say("limit-share-" + place, what, entry.sharePercent());
    }
}
