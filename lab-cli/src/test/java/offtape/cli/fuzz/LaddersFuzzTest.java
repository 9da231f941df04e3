package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.report.result.LadderSession;
import offtape.report.result.Results;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Sessions of which only the ladders are read, to set the level of what is recorded. */
@Tag("fuzz")
@Timeout(20)
final class LaddersFuzzTest {

    private final HostileFile file = HostileFile.named(Results.FILE);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .attempt(() -> LadderSession.read(file.folder()).levelAtK3(1))
                .ifPresent(level -> assertTrue(Double.isFinite(level), "level"));
    }
}
