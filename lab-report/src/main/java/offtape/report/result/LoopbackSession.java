package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.text.InertText;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;

/**
 * A session in which the interface measured itself, read back from its {@code results.json}.
 *
 * @param place the file, for messages
 * @param recordingSampleRate frames a second of its recording
 * @param programmeSha256 digest of its programme's cue sheet
 * @param use how other sessions name it
 * @param figures what it holds of the interface
 */
public record LoopbackSession(
        String place,
        int recordingSampleRate,
        String programmeSha256,
        LoopbackUse use,
        InterfaceFigures figures) {

    private static final Sentences SAID = Sentences.near(LoopbackSession.class);

    /** Many times what a session takes that any programme gives. */
    private static final int MOST_MEBIBYTES = 64;

    private static final StrictJson<File> JSON =
            new StrictJson<>(File.class, SAID.say("results-of-session"), MOST_MEBIBYTES);

    /** What is read of the file; what else a session holds is passed over. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    private record File(
            String format,
            Integer version,
            Head session,
            @JsonProperty("interface") InterfaceFigures figures) {}

    /** What is read of the session's description. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    private record Head(
            String mode,
            String madeAt,
            String recordingSha256,
            Integer recordingSampleRate,
            String programmeSha256) {}

    /**
     * Reads a session's folder.
     *
     * @throws UnusableInputException if it is no session, or none of the mode loopback
     */
    public static LoopbackSession read(Path folder) {
        Path file = folder.resolve(Results.FILE);
        if (!Files.isRegularFile(file)) {
            throw new UnusableInputException(
                    SAID.say("no-results", folder) + " " + SAID.say("give-folder-of-loopback"));
        }
        return of(JSON.read(file), file.toString());
    }

    private static LoopbackSession of(File read, String place) {
        if (!Results.FORMAT.equals(read.format())) {
            throw new UnusableInputException(
                    SAID.say("not-results", place) + " " + SAID.say("give-folder-of-loopback"));
        }
        if (read.version() == null || read.version() != Results.VERSION) {
            throw new UnusableInputException(
                    SAID.say("other-version", place, read.version(), Results.VERSION));
        }
        Head head = read.session();
        if (head == null || !CaptureMode.LOOPBACK.key().equals(head.mode())) {
            throw new UnusableInputException(
                    (head == null || head.mode() == null
                                    ? SAID.say("loopback-without-mode", place)
                                    : SAID.say("loopback-of-mode", place, printable(head.mode())))
                            + " "
                            + SAID.say("loopback-again"));
        }
        if (read.figures() == null
                || head.recordingSampleRate() == null
                || head.programmeSha256() == null
                || head.madeAt() == null
                || head.recordingSha256() == null) {
            throw new UnusableInputException(
                    SAID.say("loopback-incomplete", place) + " " + SAID.say("loopback-again"));
        }
        return new LoopbackSession(
                place,
                head.recordingSampleRate(),
                head.programmeSha256(),
                new LoopbackUse(printable(head.madeAt()), printable(head.recordingSha256())),
                read.figures());
    }

    private static String printable(String text) {
        String clean = InertText.line(text);
        return clean.length() <= 80 ? clean : clean.substring(0, 80) + "…";
    }
}
