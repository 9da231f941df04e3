package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.List;
import offtape.cli.batch.BatchEntry;
import offtape.cli.batch.BatchList;
import offtape.cli.batch.ListedReturns;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Lists of returns, as lines and as tables. */
@Tag("fuzz")
@Timeout(20)
final class BatchListFuzzTest {

    private final HostileFile file = HostileFile.named("list.csv");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        Path programme = file.folder();
        file.holding(bytes)
                .read(path -> BatchList.read(path, programme))
                .ifPresent(BatchListFuzzTest::check);
    }

    /** Each session has a folder of its own, directly in that of the run. */
    private static void check(ListedReturns returns) {
        List<String> names = returns.entries().stream().map(BatchEntry::name).toList();
        assertEquals(names.size(), names.stream().distinct().count(), "two sessions in one folder");
        for (String name : names) {
            assertTrue(!name.isBlank() && !name.startsWith("."), () -> "no name: " + name);
            assertEquals(1, Path.of(name).normalize().getNameCount(), name);
            assertTrue(Path.of(name).getParent() == null, () -> "leads elsewhere: " + name);
        }
    }
}
