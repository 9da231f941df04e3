package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.report.cost.Economics;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When money, or what cannot be mended, speaks against a machine. */
class LetGoTest {

    @TempDir private Path folder;

    private Economics costs(double value, boolean repairable, boolean heads) throws IOException {
        String text =
                "{\"format\": \"offtape-economics\", \"version\": 1, \"currency\": \"crowns\","
                        + " \"paid\": 100, \"valueOfAGoodOne\": "
                        + value
                        + ", \"hourlyRate\": 50, \"repairable\": "
                        + repairable
                        + ", \"repairs\": [{\"fault\": \"worn-head\", \"partsLow\": 100,"
                        + " \"partsHigh\": 200, \"hoursLow\": 2, \"hoursHigh\": 4, \"repairable\": "
                        + heads
                        + "}]}";
        return Economics.of(Files.writeString(folder.resolve("costs.json"), text));
    }

    /** New heads make it 100 + 200 to 100 + 400, in the middle 400. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "response/left=fail|worn-head/left=0.9|600|true|true|service|worth the money",
                "response/left=fail|worn-head/left=0.9|450|true|true|service|in its middle it does.",
                "response/left=fail|worn-head/left=0.9|350|true|true|let-go|in its middle it does not",
                "response/left=fail|worn-head/left=0.9|250|true|true|let-go|does not pay, even at the least",
                "response/left=fail|worn-head/left=0.9|600|true|false|let-go|(left) cannot be mended",
                "balance=pass|worn-head/left=0.9|600|true|false|keep|very likely, 90",
                "wow-and-flutter=fail|worn-head=0.3|600|false|true|let-go|explains cannot be mended",
                "wow-and-flutter=fail|worn-head=0.3|600|true|true|service|comes on top",
                "wow-and-flutter=fail|worn-head=0.3|50|true|true|let-go|does not pay",
                // heads that cannot be mended are not why it flutters: 100 + 1 to 4 · 50, parts on
                // top
                "wow-and-flutter=fail|worn-head/left=0.9 pinch-roller=0.7|150|true|false|service|"
                        + "that is at least 150 crowns",
                "wow-and-flutter=fail|worn-head/left=0.9 pinch-roller=0.7|149|true|false|let-go|"
                        + "that is at least 150 crowns",
                "wow-and-flutter=fail|worn-head/left=0.9 pinch-roller=0.7|150|true|false|service|"
                        + "worn-head (left) cannot be mended",
                "wow-and-flutter=fail|worn-head/left=0.9 pinch-roller=0.7|150|true|true|let-go|"
                        + "that is at least 350 crowns",
                "''|worn-head/left=0.9|600|true|false|let-go|worn-head (left) cannot be mended",
                // 100 + 100 + 2 · 50 to 100 + 200 + 4 · 50 against its bounds
                "response/left=fail|worn-head/left=0.9|500|true|true|service|worth the money",
                "response/left=fail|worn-head/left=0.9|499|true|true|service|in its middle it does.",
                "response/left=fail|worn-head/left=0.9|400|true|true|service|in its middle it does.",
                "response/left=fail|worn-head/left=0.9|399|true|true|let-go|in its middle it does not",
                "response/left=fail|worn-head/left=0.9|300|true|true|let-go|in its middle it does not",
                "response/left=fail|worn-head/left=0.9|299|true|true|let-go|does not pay, even at the least",
                "balance=pass|dirty-head=0.3|50|true|true|keep|The limit is met beyond doubt"
            })
    void isWeighed(
            String checks,
            String suspects,
            double value,
            boolean repairable,
            boolean heads,
            String decision,
            String words)
            throws IOException {
        Verdict verdict =
                Decision.of(
                        Cases.situation(
                                "two-pass",
                                checks,
                                suspects,
                                0.5,
                                "",
                                costs(value, repairable, heads)),
                        List.of());
        String said = String.join("\n", verdict.because());
        assertEquals(decision, verdict.decision(), said);
        assertTrue(said.contains(words), said);
    }

    /** What is lived with is no step, though it is told. */
    @Test
    void whatCannotBeMendedAndFailsNothingIsNoStep() throws IOException {
        Verdict verdict =
                Decision.of(
                        Cases.situation(
                                "two-pass",
                                "wow-and-flutter=fail",
                                "worn-head/left=0.9 pinch-roller=0.7 ground-loop=0.6",
                                0.1,
                                "",
                                costs(600, true, false)),
                        List.of());
        assertEquals(
                List.of("The ground-loop", "The pinch-roller", "Measure again in the"),
                verdict.next().stream().map(n -> n.replaceAll(" –.*| same way.*", "")).toList());
        assertTrue(
                verdict.because().stream().anyMatch(b -> b.startsWith("The worn-head (left) –")));
    }
}
