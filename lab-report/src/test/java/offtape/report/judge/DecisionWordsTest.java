package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.report.result.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The four decisions as one reads them. */
class DecisionWordsTest {

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "keep, Keep it.",
                "service, Have it serviced.",
                "let-go, Let it go.",
                "-, Not decided yet."
            })
    void isOneShortSentence(String decision, String words) {
        assertEquals(
                words,
                DecisionWords.of(
                        new Verdict(
                                decision, null, List.of(), List.of(), List.of(), null, List.of(),
                                List.of())));
    }
}
