package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Pass;
import offtape.report.result.Passes;

/** Several replays of one recording as lines for the terminal. */
final class PassWords {

    private PassWords() {}

    /**
     * A line a replay, and what of the wavering lies on the tape.
     *
     * @param passes null if there was one replay
     */
    static List<String> lines(Passes passes) {
        if (passes == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        for (Pass pass : passes.readings()) {
            lines.add(
                    "  "
                            + Figures.text(pass.figures().weightedPeak())
                            + " weighted peak"
                            + ", "
                            + Figures.signed(pass.rate())
                            + " mean speed"
                            + " in "
                            + pass.file());
        }
        lines.add(
                "  the mean of these, spread "
                        + Figures.text(passes.spread().weightedPeak())
                        + "; on the tape "
                        + part(passes.written().weightedRms())
                        + ", added by a replay "
                        + part(passes.read().weightedRms())
                        + " (weighted rms)");
        return lines;
    }

    private static String part(Quantity q) {
        return q.isKnown() ? Figures.text(q) + " " + Figures.uncertainty(q) : "not known";
    }
}
