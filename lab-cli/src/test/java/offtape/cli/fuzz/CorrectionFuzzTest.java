package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import offtape.report.apply.correct.Corrector;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Results of a session, from which a correction is designed. */
@Tag("fuzz")
@Timeout(20)
final class CorrectionFuzzTest {

    /** Filters are designed in tables of the same size for any session, bytes. */
    private static final long MEMORY = 256L << 20;

    private final HostileFile file = HostileFile.computed(Results.FILE, MEMORY);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .read(ResultsReader::read)
                .ifPresent(results -> file.attempt(() -> designed(results)));
    }

    private static String designed(Results results) {
        Corrector corrector = new Corrector(results, "the session", TargetCurveFuzzTest.wish(null));
        return ResultsJson.write(corrector.correction(List.of(results)));
    }
}
