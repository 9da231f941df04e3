package offtape.core.output;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;
import offtape.core.text.Sentences;

/** Why a file could not be read or written, in words that fit after a colon. */
public final class DiskTrouble {

    private static final Sentences SAID = Sentences.near(DiskTrouble.class);

    private DiskTrouble() {}

    /**
     * The reason and, where there is one, the remedy.
     *
     * @param trouble what the file system threw
     * @return a clause without a capital and without a full stop
     */
    public static String words(IOException trouble) {
        String said = reason(trouble).toLowerCase(Locale.ROOT);
        if (said.contains("no space left") || said.contains("not enough space")) {
            return SAID.say("disk.full");
        }
        if (said.contains("quota")) {
            return SAID.say("disk.quota");
        }
        if (said.contains("read-only")) {
            return SAID.say("disk.read-only");
        }
        if (trouble instanceof AccessDeniedException) {
            return SAID.say("disk.permission");
        }
        if (trouble instanceof NoSuchFileException) {
            return SAID.say("disk.gone");
        }
        return SAID.say("disk.other", reason(trouble));
    }

    private static String reason(IOException trouble) {
        String reason =
                trouble instanceof FileSystemException fault && fault.getReason() != null
                        ? fault.getReason()
                        : trouble.getMessage();
        return reason == null ? trouble.getClass().getSimpleName() : reason;
    }
}
