package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import offtape.report.judge.Judge;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Sets of limits, and sound results held against them. */
@Tag("fuzz")
@Timeout(20)
final class LimitsFuzzTest {

    /** Of the seeds, one with a little of everything. */
    static final String SESSION = "ResultsFuzzTestInputs/anyBytes/session.json";

    private final HostileFile file = HostileFile.named("limits.json");
    private final Results results = soundResults(SESSION);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .read(path -> LimitSet.of(path.toString()))
                .ifPresent(set -> ResultsJson.write(Judge.judged(results, set)));
    }

    /** Those of a seed. */
    static Results soundResults(String place) {
        try (InputStream seed = LimitsFuzzTest.class.getResourceAsStream(place)) {
            return HostileFile.named(Results.FILE)
                    .holding(seed.readAllBytes())
                    .read(ResultsReader::read)
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
