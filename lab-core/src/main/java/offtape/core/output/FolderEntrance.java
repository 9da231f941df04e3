package offtape.core.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/**
 * The way into a folder's workplace: inside the folder if that is there, else beside its place,
 * where it can appear whole.
 *
 * <p>A run that began beside stays there when the folder has appeared, so whoever enters inside
 * looks beside too. And who takes the lock beside looks once more whether the folder is there now.
 * Of two runs, in whatever order they come, one then sees the other.
 */
final class FolderEntrance {

    private static final Sentences SAID = Sentences.near(FolderEntrance.class);

    private static final String INSIDE = ".offtape";
    private static final String INSTEAD = SAID.say("another-out");

    private FolderEntrance() {}

    /**
     * Enters.
     *
     * @throws RefusedOutputException if another run is in it or the place is not writable
     */
    static Workplace enter(Path folder) {
        if (folder.getParent() == null) {
            return Workplace.enter(folder, folder, INSIDE, INSTEAD);
        }
        if (!Files.exists(folder)) {
            Workplace workplace =
                    Workplace.enter(folder, folder.getParent(), beside(folder), INSTEAD);
            if (!Files.exists(folder)) {
                return workplace;
            }
            leave(folder, workplace);
        }
        Workplace workplace = Workplace.enter(folder, folder, INSIDE, INSTEAD);
        try {
            Workplace.clear(folder, folder.getParent(), beside(folder), INSTEAD);
        } catch (RefusedOutputException e) {
            throw left(workplace, e);
        }
        return workplace;
    }

    private static String beside(Path folder) {
        return "." + folder.getFileName() + INSIDE;
    }

    private static void leave(Path folder, Workplace workplace) {
        try {
            workplace.abandon();
        } catch (IOException e) {
            throw Workplace.unwritable(folder, e);
        }
    }

    /** Leaves the workplace for a reason, to be thrown; trouble on the way out is added to it. */
    static RefusedOutputException left(Workplace workplace, RefusedOutputException why) {
        try {
            workplace.abandon();
        } catch (IOException e) {
            why.addSuppressed(e);
        }
        return why;
    }
}
