package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import offtape.cli.batch.Seal;
import offtape.core.output.Sha256;
import offtape.report.result.Results;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Seals on the sessions of a batch, beside results that consist of two braces. */
@Tag("fuzz")
@Timeout(20)
final class SealFuzzTest {

    private final HostileFile file = HostileFile.named(Seal.FILE);
    private final Path results = resultsIn(file.folder());

    @FuzzTest
    void anyBytes(byte[] bytes) {
        Optional<Seal> seal =
                file.holding(bytes).attempt(() -> Seal.in(file.folder())).orElseThrow();
        seal.ifPresent(this::check);
    }

    /** Whatever else it says, it is on these results and does not pass for one of other inputs. */
    private void check(Seal seal) {
        assertEquals(Sha256.ofFile(results), seal.resultsSha256());
        assertFalse(seal.isOf(results, "other inputs"));
    }

    /** Makes them. */
    static Path resultsIn(Path folder) {
        try {
            Path results = folder.resolve(Results.FILE);
            results.toFile().deleteOnExit();
            return Files.writeString(results, "{}");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
