package offtape.report.measure.continuity;

import java.util.List;
import java.util.Locale;
import offtape.report.result.HealthNote;

/** Jumps of time in words. */
public final class JumpNotes {

    private static final int MOST = 5;

    private JumpNotes() {}

    /** One warning for all of them, none if there are none. */
    public static List<HealthNote> of(List<Jump> jumps) {
        if (jumps.isEmpty()) {
            return List.of();
        }
        StringBuilder text = new StringBuilder();
        jumps.stream().limit(MOST).forEach(j -> text.append(sentence(j)).append(' '));
        if (jumps.size() > MOST) {
            text.append("There are ").append(jumps.size() - MOST).append(" more such places. ");
        }
        text.append(
                "The computer was late while playing or recording, the recording was edited, or the"
                        + " tape slipped. Record again with a larger buffer and fewer other"
                        + " programs.");
        return List.of(new HealthNote("warning", "xrun", text.toString()));
    }

    private static String sentence(Jump jump) {
        String place =
                jump.isSharp()
                        ? String.format(Locale.ROOT, "At %.2f s", jump.middleSeconds())
                        : String.format(
                                Locale.ROOT,
                                "Between %.1f s and %.1f s",
                                jump.fromSeconds(),
                                jump.toSeconds());
        return String.format(
                Locale.ROOT,
                jump.lateSeconds() < 0
                        ? "%s of the recording %.1f ms of sound are missing."
                        : "%s of the recording %.1f ms were added.",
                place,
                1000 * Math.abs(jump.lateSeconds()));
    }
}
