package offtape.report.result;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.LenientMembers;
import offtape.core.json.StrictJson;
import offtape.core.text.Sentences;

/** Reads the results of a session back from its folder. */
public final class ResultsReader {

    private static final Sentences SAID = Sentences.near(ResultsReader.class);

    /** Many times what a session takes that any programme gives. */
    private static final int MOST_MEBIBYTES = 64;

    private static final StrictJson<Results> JSON =
            new StrictJson<>(
                    Results.class,
                    SAID.say("results-of-session"),
                    MOST_MEBIBYTES,
                    new LenientMembers());

    private ResultsReader() {}

    /**
     * Reads a session's folder, or its results file. Members that a later release added are passed
     * over.
     *
     * @throws UnusableInputException if it is no session or cannot be used
     */
    public static Results read(Path session) {
        Path file = Files.isDirectory(session) ? session.resolve(Results.FILE) : session;
        if (!Files.isRegularFile(file)) {
            throw new UnusableInputException(
                    SAID.say("no-results", session) + " " + SAID.say("give-folder"));
        }
        // what a later version holds may be of other kinds, which would be refused for that
        OptionalInt version = JSON.wholeNumber(file, "version");
        if (version.isPresent() && version.getAsInt() != Results.VERSION) {
            throw new UnusableInputException(
                    SAID.say("other-version", file, version.getAsInt(), Results.VERSION));
        }
        Results results = JSON.read(file);
        if (!Results.FORMAT.equals(results.format()) || results.session() == null) {
            throw new UnusableInputException(
                    SAID.say("not-results", file) + " " + SAID.say("give-folder"));
        }
        ResultsCheck.check(results, file);
        return results;
    }
}
