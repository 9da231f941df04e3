package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.TreeSet;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultNote;
import org.junit.jupiter.api.Test;

/** What faults worsen are quantities that a limit may be set for. */
class FaultMovesTest {

    @Test
    void everyQuantityIsKnownAndEachHasAFaultThatWorsensIt() {
        Set<String> moved = new TreeSet<>();
        for (FaultNote note : FaultCatalogue.all()) {
            for (String key : note.moves()) {
                assertTrue(Judged.named(key).isPresent(), note.code() + ": " + key);
                moved.add(key);
            }
            assertEquals(note.moves().size(), Set.copyOf(note.moves()).size(), note.code());
        }
        assertEquals(Judged.values().length, moved.size(), moved.toString());
    }
}
