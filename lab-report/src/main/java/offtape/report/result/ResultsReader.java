package offtape.report.result;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.LenientMembers;
import offtape.core.json.StrictJson;

/** Reads the results of a session back from its folder. */
public final class ResultsReader {

    /** Many times what a session takes that any programme gives. */
    private static final int MOST_MEBIBYTES = 64;

    private static final StrictJson<Results> JSON =
            new StrictJson<>(
                    Results.class,
                    "the results of a session",
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
                    session
                            + " holds no "
                            + Results.FILE
                            + ". Give the folder that \"offtape measure\" wrote.");
        }
        // what a later version holds may be of other kinds, which would be refused for that
        OptionalInt version = JSON.wholeNumber(file, "version");
        if (version.isPresent() && version.getAsInt() != Results.VERSION) {
            throw new UnusableInputException(
                    file
                            + " is of version "
                            + version.getAsInt()
                            + ", which is not known to this release; it reads version "
                            + Results.VERSION
                            + ".");
        }
        Results results = JSON.read(file);
        if (!Results.FORMAT.equals(results.format()) || results.session() == null) {
            throw new UnusableInputException(
                    file
                            + " is not the results of a session. Give the folder that \"offtape"
                            + " measure\" wrote.");
        }
        ResultsCheck.check(results, file);
        return results;
    }
}
