package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.cli.transfer.TransferEntry;
import offtape.cli.transfer.TransferLog;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Logs of a transfer that is gone on with: one that is not understood tells of nothing done. */
@Tag("fuzz")
@Timeout(20)
final class TransferLogFuzzTest {

    private final HostileFile file = HostileFile.named(TransferLog.FILE);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        TransferLog log =
                file.holding(bytes)
                        .attempt(() -> TransferLog.in(file.folder(), null, null))
                        .orElseThrow();
        for (TransferEntry entry : log.stems()) {
            assertTrue(entry.file() != null && entry.outcome() != null, "of no stem");
        }
    }
}
