package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import offtape.cli.realign.SessionTiming;
import offtape.core.text.Language;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchState;
import offtape.report.compare.Comparison;
import offtape.report.compare.History;
import offtape.report.render.ReportWriter;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Results of a session, read to be set against others. */
@Tag("fuzz")
@Timeout(20)
final class ResultsFuzzTest {

    private final HostileFile file = HostileFile.named(Results.FILE);
    private final Results sound = LimitsFuzzTest.soundResults(LimitsFuzzTest.SESSION);

    /**
     * Whatever was read can be compared, put in a history, a row of a batch, or told of a path's
     * time, or that is refused in words.
     */
    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(ResultsReader::read).ifPresent(this::use);
    }

    private void use(Results results) {
        ResultsJson.write(results);
        file.attempt(() -> compared(sound, results));
        file.attempt(() -> compared(results, sound));
        file.attempt(() -> BatchRow.of("attic", "attic.wav", BatchState.UNCHANGED, results));
        file.attempt(() -> SessionTiming.of(results));
        file.attempt(() -> written(History.of(List.of(sound, results), null)));
    }

    private static String compared(Results before, Results after) {
        Comparison comparison = Comparison.of(before, after, List.of(before));
        return ResultsJson.write(comparison)
                + ReportWriter.html(comparison, before, after)
                + ReportWriter.html(comparison, before, after, Language.GERMAN);
    }

    private static String written(History history) {
        return ResultsJson.write(history)
                + ReportWriter.html(history)
                + ReportWriter.html(history, Language.GERMAN);
    }
}
