package offtape.core.output;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** Why a file could not be read or written, in words that fit after a colon. */
public final class DiskTrouble {

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
            return "the disk is full; make room or choose another disk";
        }
        if (said.contains("quota")) {
            return "the disk quota is used up; make room or choose another disk";
        }
        if (said.contains("read-only")) {
            return "the disk is read-only; choose another one";
        }
        if (trouble instanceof AccessDeniedException) {
            return "permission is missing; check the rights of the file and its folder";
        }
        if (trouble instanceof NoSuchFileException) {
            return "it is no longer there";
        }
        return "the system says \"" + reason(trouble) + "\"";
    }

    private static String reason(IOException trouble) {
        String reason =
                trouble instanceof FileSystemException fault && fault.getReason() != null
                        ? fault.getReason()
                        : trouble.getMessage();
        return reason == null ? trouble.getClass().getSimpleName() : reason;
    }
}
