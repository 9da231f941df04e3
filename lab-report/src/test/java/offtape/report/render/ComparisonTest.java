package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.report.compare.Change;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Comparison;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sessions read back and set against each other. */
class ComparisonTest {

    @TempDir private Path folder;

    private static Results with(Session session) {
        return Scenario.session(session, 1);
    }

    private static Session session(double mmPerS, String mode, String tape) {
        return new Session(
                "Kitchen-table two-track",
                tape,
                mmPerS,
                mode,
                "2026-03-28T10:05:00Z",
                null,
                "Offtape 0.1.0",
                "a81e".repeat(16));
    }

    /** Nine significant digits are written, so what was written once is written alike again. */
    @Test
    void resultsAreReadBackAsTheyWereWritten() throws IOException {
        String text = ResultsJson.write(Scenario.before());
        Files.writeString(folder.resolve(Results.FILE), text);
        assertEquals(text, ResultsJson.write(ResultsReader.read(folder)));
        String later = text.replaceFirst("\\{", "{ \"addedLater\" : { \"a\" : [ 1 ] },");
        Files.writeString(folder.resolve(Results.FILE), later);
        assertEquals(text, ResultsJson.write(ResultsReader.read(folder)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{ \"format\" : \"something\" }|results.json",
                "[1]|results.json",
                "{|results.json"
            })
    void whatIsNoSessionIsRefused(String text, String words) throws IOException {
        Files.writeString(folder.resolve(Results.FILE), text);
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> ResultsReader.read(folder));
        assertTrue(e.getMessage().contains(words), e.getMessage());
        assertThrows(
                UnusableInputException.class, () -> ResultsReader.read(folder.resolve("none")));
    }

    @Test
    void anotherVersionIsRefused() throws IOException {
        String text = ResultsJson.write(Scenario.before());
        Files.writeString(
                folder.resolve(Results.FILE), text.replace("\"version\" : 1", "\"version\" : 2"));
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> ResultsReader.read(folder));
        assertTrue(e.getMessage().contains("version 2"), e.getMessage());
    }

    @Test
    void theServiceMadeItBetter() {
        Comparison c = Comparison.of(Scenario.before(), Scenario.after(), List.of());
        List<Change> better = c.gone(Direction.BETTER);
        assertTrue(
                better.stream().anyMatch(x -> x.name().startsWith("Wow and flutter")),
                () -> "better: " + better);
        assertEquals(0, c.repeats());
        assertEquals(List.of(), c.notes());
    }

    /**
     * Two measurings that lie 2·d apart have a standard deviation of d·√2; Student's t for one
     * degree of freedom is 12.706 (any table), so the difference of two is known within 25.4·d, and
     * nothing has changed.
     */
    @Test
    void scatterHidesAChange() {
        Comparison c =
                Comparison.of(
                        Scenario.before(),
                        Scenario.after(),
                        List.of(Scenario.before(), Scenario.after()));
        for (Change change : c.changes()) {
            if (change.isKnown()) {
                double apart = Math.abs(change.after().value() - change.before().value());
                assertEquals(12.706 * apart, change.repeatability(), 0.001 * apart);
            }
        }
        assertEquals(List.of(), c.gone(Direction.BETTER));
    }

    @Test
    void unlikeSessionsAreRefusedWithTheReason() {
        Results one = with(session(190.5, "off-tape", "a roll of long-play tape"));
        Results slow = with(session(95.25, "off-tape", null));
        Results other = with(session(190.5, "two-pass", null));
        for (Results unlike : List.of(slow, other)) {
            UnusableInputException e =
                    assertThrows(
                            UnusableInputException.class,
                            () -> Comparison.of(one, unlike, List.of()));
            String what =
                    unlike == slow ? "tape speed, 19.05 cm/s and 9.53 cm/s" : "mode, off-tape";
            assertTrue(e.getMessage().contains(what), e.getMessage());
        }
        Results tape = with(session(190.5, "off-tape", "another roll"));
        assertTrue(
                Comparison.of(one, tape, List.of()).notes().get(0).contains("tapes"),
                "another tape is told");
    }
}
