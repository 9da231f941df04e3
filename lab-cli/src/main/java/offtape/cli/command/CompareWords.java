package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Language;
import offtape.core.unit.Quantity;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;
import offtape.report.compare.FaultChange;
import offtape.report.compare.PairWords;

/** A comparison as lines for the terminal. */
final class CompareWords {

    private final Speech speech;
    private final Language language;

    /** The words spoken on a terminal. */
    CompareWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
        this.language = terminal.language();
    }

    /** Decision, figures, faults, and what should be known beside. */
    List<String> lines(Comparison comparison) {
        PairWords words = PairWords.of(comparison, language);
        List<String> lines = new ArrayList<>();
        if (words.areMachines()) {
            lines.add(speech.say("compare.machines", words.first(), words.second()));
        }
        if (comparison.decision().differ()) {
            lines.add(words.decisions(comparison.decision()));
        }
        lines.addAll(figures(comparison, words));
        if (comparison.faults().isEmpty()) {
            lines.add(words.noFaults(comparison.decision()));
        }
        comparison.faults().forEach(f -> lines.add(line(f, words)));
        comparison.notes().forEach(n -> lines.add(speech.say("compare.mind", speech.told(n))));
        return lines;
    }

    private List<String> figures(Comparison comparison, PairWords words) {
        List<String> lines = new ArrayList<>();
        for (Direction direction : List.of(Direction.BETTER, Direction.WORSE)) {
            comparison.gone(direction).forEach(c -> lines.add(line(c, words)));
        }
        if (lines.isEmpty()) {
            lines.add(
                    speech.say(
                            words.areMachines() ? "compare.none-differs" : "compare.none-changed"));
        }
        return lines;
    }

    private String line(Change c, PairWords words) {
        Quantity d = c.difference();
        String first = speech.value(c.before());
        String second = speech.value(c.after());
        String better = words.better(c.direction());
        String label = speech.told(c.label());
        return words.areMachines()
                ? speech.say(
                        "compare.machines-line",
                        better,
                        label,
                        first,
                        d.unit(),
                        words.onFirst(),
                        second,
                        d.unit(),
                        words.onSecond(),
                        speech.signedValue(d),
                        speech.uncertainty(d))
                : speech.say(
                        "compare.service-line",
                        better,
                        label,
                        first,
                        second,
                        d.unit(),
                        speech.signedValue(d),
                        speech.uncertainty(d));
    }

    private String line(FaultChange f, PairWords words) {
        String line =
                speech.say(
                        "compare.fault",
                        words.outcome(f),
                        speech.told(f.label()),
                        words.likelihood(f, f.before()),
                        words.onFirst(),
                        words.likelihood(f, f.after()),
                        words.onSecond());
        return f.reason() == null
                ? line
                : speech.say("compare.fault-reason", line, speech.told(f.reason()));
    }
}
