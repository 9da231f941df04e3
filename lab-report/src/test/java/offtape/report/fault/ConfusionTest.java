package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.report.fault.rank.Signatures;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How often the right fault is named, on machines of a seed that nothing was learned from. Runs
 * with {@code -Pfault-studies}.
 */
class ConfusionTest {

    private static final int SOUND = 100;
    private static final int SINGLE = 216;
    private static final int PAIRS = 90;

    /** Machines that are measured at a time and kept. */
    private static final int PART = 25;

    /** Chosen before anything was learned, and left. */
    private static final long SEED = 3_150_000;

    @TempDir private static Path folder;

    @Test
    @Tag("fault-study")
    void namesFaults() throws IOException {
        FaultSessions sessions = new FaultSessions(folder);
        Signatures signatures = Signatures.load();
        Confusion confusion = new Confusion(signatures);
        for (int from = 0; from < SOUND; from += PART) {
            int to = Math.min(SOUND, from + PART);
            int first = from;
            confusion.addAll(
                    SessionStore.of("sound-" + from, () -> sessions.sound(first, to, SEED)));
        }
        confusion.addAll(faulty(sessions, SINGLE, 1));
        confusion.addAll(faulty(sessions, PAIRS, 2));
        System.out.println(confusion.table());
        Files.writeString(Path.of("target", "confusion.md"), confusion.table());
        assertTrue(confusion.soundShare() >= 0.98, "sound machines called sound");
        assertTrue(confusion.firstShare() >= 0.85, "single faults named first");
        assertTrue(confusion.secondShare() >= 0.95, "single faults named first or second");
    }

    private static List<FaultSession> faulty(FaultSessions sessions, int count, int faults) {
        List<FaultSession> all = new ArrayList<>();
        for (int from = 0; from < count; from += PART) {
            int first = from;
            int to = Math.min(count, from + PART);
            all.addAll(
                    SessionStore.of(
                            "faults-" + faults + "-" + from,
                            () -> sessions.faulty(first, to, count, faults, SEED)));
        }
        return all;
    }
}
