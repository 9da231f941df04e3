package offtape.cli.batch;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import offtape.report.result.Results;

/**
 * From what a session was measured, so that it is known again: the content of {@code batch.json} in
 * its folder.
 *
 * @param format always {@link #FORMAT}
 * @param version always 1
 * @param recordingSha256 digest of the return
 * @param inputsSha256 digest of all else that makes the results: software, programme, options
 * @param resultsSha256 digest of the results, which another command may have replaced
 */
@JsonPropertyOrder({"format", "version"})
public record Seal(
        String format,
        int version,
        String recordingSha256,
        String inputsSha256,
        String resultsSha256) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-batch-session";

    /** Name of the file in the folder of the session. */
    public static final String FILE = "batch.json";

    private static StrictJson<Seal> json() {
        return new StrictJson<>(Seal.class, "the seal of a session");
    }

    /** The seal of a finished session whose results are still those it was put on. */
    public static Optional<Seal> in(Path session) {
        Path file = session.resolve(FILE);
        Path results = session.resolve(Results.FILE);
        if (!Files.isRegularFile(file) || !Files.isRegularFile(results)) {
            return Optional.empty();
        }
        try {
            Seal seal = json().read(file);
            boolean whole =
                    FORMAT.equals(seal.format())
                            && seal.version() == 1
                            && Sha256.ofFile(results).equals(seal.resultsSha256());
            return whole ? Optional.of(seal) : Optional.empty();
        } catch (UnusableInputException e) {
            // what cannot be read is measured anew
            return Optional.empty();
        }
    }

    /** Whether it stands for a return that is measured in a given way. */
    public boolean isOf(Path recording, String inputs) {
        return inputs.equals(inputsSha256) && Sha256.ofFile(recording).equals(recordingSha256);
    }

    /** Puts a seal on the results that were written into a folder. */
    public static void put(OutputFolder folder, String recording, String inputs) {
        String results = Sha256.ofFile(folder.path(Results.FILE));
        String text = json().write(new Seal(FORMAT, 1, recording, inputs, results));
        folder.write(FILE, text.getBytes(StandardCharsets.UTF_8));
    }
}
