package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Sentences;
import offtape.report.apply.listen.ListenFacts;

/** What was done to the two sounds and what to do next, as lines for the terminal. */
final class ListenNotes {

    private static final Sentences SAID = Sentences.near(ListenNotes.class);

    private final Speech speech;

    /** The words spoken on a terminal. */
    ListenNotes(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    List<String> lines(ListenFacts facts, Path page, long bytes) {
        List<String> lines = new ArrayList<>();
        lines.add(speech.say("listen.files", facts.a().file(), facts.b().file()));
        facts.sentences().forEach(s -> lines.add(speech.told(s)));
        lines.add(speech.say("listen.page", page, bytes / 1e6));
        lines.add(speech.say("listen.next", speech.told(next(facts))));
        return lines;
    }

    /** What to do with the page. */
    static String next(ListenFacts facts) {
        return facts.training()
                ? SAID.say("listen-practise")
                : SAID.say("listen-trials", facts.trials(), facts.fewestRight());
    }
}
