package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.report.fault.rank.Signatures;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How often the right fault is named, on machines of a seed that nothing was learned from. Runs
 * with {@code -Pstudies}.
 */
class ConfusionTest {

    private static final int SOUND = 100;
    private static final int SINGLE = 216;
    private static final int PAIRS = 90;

    /** Chosen before anything was learned, and left. */
    private static final long SEED = 3_150_000;

    @TempDir private static Path folder;

    @Test
    @Tag("study")
    void namesFaults() throws IOException {
        FaultSessions sessions = new FaultSessions(folder);
        Signatures signatures = Signatures.load();
        Confusion confusion = new Confusion(signatures);
        confusion.addAll(SessionStore.of("sound", () -> sessions.sound(SOUND, SEED)));
        confusion.addAll(SessionStore.of("single", () -> sessions.faulty(SINGLE, 1, SEED)));
        confusion.addAll(SessionStore.of("pairs", () -> sessions.faulty(PAIRS, 2, SEED)));
        System.out.println(confusion.table());
        Files.writeString(Path.of("target", "confusion.md"), confusion.table());
        assertTrue(confusion.soundShare() >= 0.98, "sound machines called sound");
        assertTrue(confusion.firstShare() >= 0.85, "single faults named first");
        assertTrue(confusion.secondShare() >= 0.95, "single faults named first or second");
    }
}
