package offtape.report.measure.continuity;

import java.util.List;
import offtape.core.text.Sentences;
import offtape.report.result.HealthNote;

/** Jumps of time in words. */
public final class JumpNotes {

    private static final Sentences SAID = Sentences.near(JumpNotes.class);

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
            text.append(SAID.say("more", jumps.size() - MOST)).append(' ');
        }
        text.append(SAID.say("cause"));
        return List.of(new HealthNote("warning", "xrun", text.toString()));
    }

    private static String sentence(Jump jump) {
        boolean missing = jump.lateSeconds() < 0;
        double milliseconds = 1000 * Math.abs(jump.lateSeconds());
        return jump.isSharp()
                ? SAID.say(missing ? "missing-at" : "added-at", jump.middleSeconds(), milliseconds)
                : SAID.say(
                        missing ? "missing-between" : "added-between",
                        jump.fromSeconds(),
                        jump.toSeconds(),
                        milliseconds);
    }
}
