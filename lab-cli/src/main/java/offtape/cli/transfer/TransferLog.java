package offtape.cli.transfer;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.BoundedJson;
import offtape.core.json.JsonLayout;
import offtape.core.json.StrictJson;

/**
 * What was done to the stems of a folder: the content of {@code transfer.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param machineName the user's name for the machine, from the session of the last run, or null
 * @param sessionSha256 digest of that session's recording, or null
 * @param stems one entry a return, in the order in which they were first sent
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TransferLog(
        String format,
        int version,
        String machineName,
        String sessionSha256,
        List<TransferEntry> stems) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-transfer";

    /** The version written here. */
    public static final int VERSION = 1;

    /** Name of the file in the folder of the returns. */
    public static final String FILE = "transfer.json";

    private static final int MOST_MEBIBYTES = 16;

    /** Copies the list. */
    public TransferLog {
        stems = stems == null ? List.of() : List.copyOf(stems);
    }

    /**
     * The log of a folder, to be gone on with.
     *
     * @return one without stems if the folder has none that can be read
     */
    public static TransferLog in(Path folder, String machineName, String sessionSha256) {
        return new TransferLog(FORMAT, VERSION, machineName, sessionSha256, earlier(folder));
    }

    private static List<TransferEntry> earlier(Path folder) {
        Path file = folder.resolve(FILE);
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        try {
            TransferLog log =
                    new StrictJson<>(TransferLog.class, "the log of a transfer", MOST_MEBIBYTES)
                            .read(file);
            return FORMAT.equals(log.format()) && log.version() == VERSION
                    ? log.stems()
                    : List.of();
        } catch (UnusableInputException e) {
            // what is not understood tells of nothing that is done
            return List.of();
        }
    }

    /** The entry of a return. */
    Optional<TransferEntry> of(String file) {
        return stems.stream().filter(e -> e.file().equals(file)).findFirst();
    }

    /** The same log with an entry, in the place of that of the same return. */
    TransferLog with(TransferEntry entry) {
        List<TransferEntry> all = new ArrayList<>(stems);
        int place = of(entry.file()).map(all::indexOf).orElse(-1);
        if (place < 0) {
            all.add(entry);
        } else {
            all.set(place, entry);
        }
        return new TransferLog(format, version, machineName, sessionSha256, all);
    }

    /** Its text. */
    byte[] bytes() {
        try {
            // nothing is read by it
            ObjectMapper mapper = BoundedJson.mapper(0).build();
            String text =
                    mapper.writer(JsonLayout.objectsAndLists()).writeValueAsString(this) + "\n";
            return text.getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the log could not be written: " + e.getMessage(), e);
        }
    }
}
