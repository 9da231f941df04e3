package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.report.result.LoopbackSession;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Sessions of an interface, as they are taken out of others. */
@Tag("fuzz")
@Timeout(20)
final class LoopbackFuzzTest {

    private final HostileFile file = HostileFile.named(Results.FILE);

    /** What is read holds nothing but numbers, or writing it would fail. */
    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .attempt(() -> LoopbackSession.read(file.folder()))
                .ifPresent(session -> ResultsJson.write(session.figures()));
    }
}
