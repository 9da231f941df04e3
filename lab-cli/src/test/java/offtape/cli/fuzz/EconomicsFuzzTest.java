package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.report.cost.Bill;
import offtape.report.cost.Economics;
import offtape.report.fault.FaultCatalogue;
import offtape.report.result.ResultsJson;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Files of costs, and the bill for every fault there is. */
@Tag("fuzz")
@Timeout(20)
final class EconomicsFuzzTest {

    private final HostileFile file = HostileFile.named("costs.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .read(Economics::of)
                .ifPresent(
                        said -> {
                            Bill bill = Bill.of(said, FaultCatalogue.all(), true);
                            assertNotNull(bill.worth());
                            ResultsJson.write(bill);
                            bill.words().forEach(EconomicsFuzzTest::requireNumbers);
                        });
    }

    private static void requireNumbers(String sentence) {
        assertTrue(!sentence.contains("NaN") && !sentence.contains("Infinity"), sentence);
    }
}
