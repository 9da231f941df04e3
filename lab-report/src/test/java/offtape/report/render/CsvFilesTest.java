package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;

/** RFC 4180: lines end with CR LF, quotes are doubled within quotes. */
final class CsvFilesTest {

    @Test
    void cellsAreQuotedWhereTheStandardAsksForIt() {
        CsvTable table = new CsvTable("a", "b");
        table.text("one, two").text("say \"no\"").end().text("two\nlines").text("").end();
        assertEquals(
                "a,b\r\n\"one, two\",\"say \"\"no\"\"\"\r\n\"two\nlines\",\r\n", table.toString());
    }

    @Test
    void textsThatLookLikeFormulasAreDisarmed() {
        CsvTable table = new CsvTable("a");
        for (String evil : List.of("=1+1", "+1", "-1", "@x", "\tx")) {
            table.text(evil).end();
        }
        assertEquals("a\r\n'=1+1\r\n'+1\r\n'-1\r\n'@x\r\n'\tx\r\n", table.toString());
    }

    @Test
    void numbersHaveADecimalPointAndNoNeedlessDigits() {
        CsvTable table = new CsvTable("a");
        table.number(-20.0, 2).number(0.12345, 3).number(-0.0001, 3).number(null, 1);
        table.number(Double.NaN, 2).number(1e7, 2).end();
        assertEquals("a\r\n-20,0.123,0,,,10000000\r\n", table.toString());
    }

    @Test
    void everyFileIsThereEvenIfNothingWasMeasured() {
        Map<String, String> files = ReportWriter.csv(Scenario.empty("x"));
        assertEquals(
                Set.of(
                        "response.csv",
                        "ladder.csv",
                        "noise.csv",
                        "speed.csv",
                        "speed-spectrum.csv",
                        "crosstalk.csv",
                        "interchannel-delay.csv",
                        "dropouts.csv"),
                files.keySet());
        files.forEach((name, text) -> assertEquals(1, text.lines().count(), name));
    }

    /** 4 curves of 121 points, 4 ladders of 17 steps, 2 times 31 bands and 3 mains lines. */
    @Test
    void everyPointIsARow() {
        Map<String, String> files = ReportWriter.csv(Scenario.before());
        assertEquals(1 + 4 * 121, files.get("response.csv").lines().count());
        assertEquals(1 + 4 * 17, files.get("ladder.csv").lines().count());
        assertEquals(1 + 2 * 31 + 3, files.get("noise.csv").lines().count());
        assertEquals(1 + 600, files.get("speed.csv").lines().count());
        assertEquals(1 + 2000, files.get("speed-spectrum.csv").lines().count());
        assertEquals(1 + 2 * 25, files.get("crosstalk.csv").lines().count());
        assertEquals(1 + 1200, files.get("interchannel-delay.csv").lines().count());
        assertEquals(1 + 3, files.get("dropouts.csv").lines().count());
    }

    @Test
    void aLadderStepIsWrittenInFull() {
        Quantity no = Scenario.UNKNOWN;
        LadderStep step = new LadderStep(3, 2.98765, 0.1, 1.234567, 1.24, 0.0123, 0.004, false);
        LadderStep lost = new LadderStep(12, null, null, null, null, null, null, true);
        Results results =
                Scenario.with(
                        Scenario.before().session(),
                        null,
                        null,
                        List.of(),
                        List.of(
                                new Distortion(
                                        "left", 1000, List.of(step, lost), no, no, no, no, no)),
                        List.of(),
                        null,
                        List.of());
        String text = ReportWriter.csv(results).get("ladder.csv");
        assertTrue(
                text.contains("\r\nleft,1000,3,2.988,0.1,1.23457,1.24,0.012,0.004,no\r\n"), text);
        assertTrue(text.contains("\r\nleft,1000,12,,,,,,,yes\r\n"), text);
        assertFalse(text.contains("null"), text);
    }
}
