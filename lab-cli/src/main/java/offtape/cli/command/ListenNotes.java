package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.report.apply.listen.ListenFacts;

/** What was done to the two sounds and what to do next, as lines for the terminal. */
final class ListenNotes {

    private ListenNotes() {}

    static List<String> lines(ListenFacts facts, Path page, long bytes) {
        List<String> lines = new ArrayList<>();
        lines.add("A is " + facts.a().file() + ", B is " + facts.b().file() + ".");
        lines.addAll(facts.sentences());
        lines.add(String.format(Locale.ROOT, "Page: %s (%.1f MB)", page, bytes / 1e6));
        lines.add("Next: " + next(facts));
        return lines;
    }

    /** What to do with the page. */
    static String next(ListenFacts facts) {
        return facts.training()
                ? "open it in a browser, turned down at first, and practise; nothing counts."
                : String.format(
                        Locale.ROOT,
                        "open it in a browser, turned down at first. Of its %d trials %d right say more"
                                + " than luck.",
                        facts.trials(),
                        facts.fewestRight());
    }
}
