package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Pass;
import offtape.report.result.Passes;

/**
 * Several replays of one recording as lines for the terminal.
 *
 * @param speech speaks of sessions
 */
record PassWords(Speech speech) {

    private static final String INDENT = "  ";

    /**
     * A line a replay, and what of the wavering lies on the tape.
     *
     * @param passes null if there was one replay
     */
    List<String> lines(Passes passes) {
        if (passes == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        for (Pass pass : passes.readings()) {
            lines.add(
                    INDENT
                            + speech.say(
                                    "session.replay",
                                    speech.text(pass.figures().weightedPeak()),
                                    speech.signed(pass.rate()),
                                    pass.file()));
        }
        lines.add(
                INDENT
                        + speech.say(
                                "session.mean",
                                speech.text(passes.spread().weightedPeak()),
                                part(passes.written().weightedRms()),
                                part(passes.read().weightedRms())));
        return lines;
    }

    private String part(Quantity q) {
        return q.isKnown()
                ? speech.text(q) + " " + speech.uncertainty(q)
                : speech.say("session.not-known");
    }
}
