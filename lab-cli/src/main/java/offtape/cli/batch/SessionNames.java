package offtape.cli.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import offtape.core.text.InertText;
import offtape.core.text.Sentences;
import offtape.report.render.BatchCsv;

/**
 * Gives each return the name of its session's folder: the one the list gives, or else the file's
 * own without its ending, with a number behind it where that is taken. Returns that are added at
 * the end of a list change no name before them.
 */
final class SessionNames {

    private static final Sentences SAID = Sentences.near(SessionNames.class);

    /**
     * What no common file system takes, what hides a folder or leads out of it, and what stands for
     * a character that steers.
     */
    private static final Pattern UNFIT = Pattern.compile("[\uFFFD/\\\\:*?\"<>|]|^[. ]|[. ]$|^$");

    private final Path list;
    private final Map<String, Integer> taken = new HashMap<>();

    SessionNames(Path list) {
        this.list = list;
        taken.put(BatchCsv.NAME, 0);
    }

    /**
     * The entries with their names, in the same order.
     *
     * @throws offtape.core.fault.UnusableInputException if two are given one name, or a name cannot
     *     be a folder's
     */
    List<BatchEntry> given(List<BatchEntry> entries) {
        entries.stream().filter(e -> e.name() != null).forEach(this::take);
        List<BatchEntry> named = new ArrayList<>();
        for (BatchEntry entry : entries) {
            named.add(entry.name() == null ? entry.named(free(entry)) : entry);
        }
        return named;
    }

    private void take(BatchEntry entry) {
        if (UNFIT.matcher(InertText.line(entry.name())).find()) {
            throw refused(
                    entry,
                    SAID.say("no-folder-name", entry.name()) + " " + SAID.say("without-slashes"));
        }
        Integer other = taken.putIfAbsent(key(entry.name()), entry.line());
        if (other != null) {
            throw refused(
                    entry,
                    other == 0
                            ? SAID.say("name-of-summary", entry.name())
                                    + " "
                                    + SAID.say("choose-another")
                            : SAID.say("name-taken", entry.name(), other)
                                    + " "
                                    + SAID.say("choose-another"));
        }
    }

    private String free(BatchEntry entry) {
        String stem = stem(entry.file());
        String name = stem;
        for (int n = 2; taken.putIfAbsent(key(name), entry.line()) != null; n++) {
            name = stem + "-" + n;
        }
        return name;
    }

    private static String stem(Path file) {
        String name =
                file.getFileName() == null ? "" : InertText.line(file.getFileName().toString());
        int dot = name.lastIndexOf('.');
        String stem = UNFIT.matcher(dot > 0 ? name.substring(0, dot) : name).replaceAll("_");
        return stem.isEmpty() ? "_" : stem;
    }

    // some systems do not tell capital letters from small ones
    private static String key(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    private RuntimeException refused(BatchEntry entry, String what) {
        return EntryReader.refused(list, entry.line(), what);
    }
}
