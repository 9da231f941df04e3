package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.report.cost.Economics;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Files of costs. */
@Tag("fuzz")
@Timeout(20)
final class EconomicsFuzzTest {

    private final HostileFile file = HostileFile.named("costs.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(Economics::of);
    }
}
