package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.List;
import offtape.report.apply.correct.CorrectionWish;
import offtape.report.apply.correct.Corrector;
import offtape.report.result.Results;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Curves that a return is to follow, wanted of a sound session. */
@Tag("fuzz")
@Timeout(20)
final class TargetCurveFuzzTest {

    /** Of the seeds, one that a correction can be made of. */
    static final String SESSION = "CorrectionFuzzTestInputs/anyBytes/session.json";

    private final HostileFile file = HostileFile.named("wanted.csv");
    private final Results results = LimitsFuzzTest.soundResults(SESSION);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(path -> new Corrector(results, "the session", wish(path)));
    }

    /** What is quickly worked out. */
    static CorrectionWish wish(Path target) {
        return new CorrectionWish(target, List.of(8000), 12, 12, 1, false, List.of());
    }
}
