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
import offtape.report.result.StepNoise;
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
        for (String evil : List.of("=1+1", "+1", "-1", "@x", "\tx", " =1", "\uFF1D1")) {
            table.text(evil).end();
        }
        table.text("\r=1").end();
        assertEquals(
                "a\r\n'=1+1\r\n'+1\r\n'-1\r\n'@x\r\n'\tx\r\n' =1\r\n'\uFF1D1\r\n\"'\n'=1\"\r\n",
                table.toString());
    }

    /** As a spreadsheet reads it whose separator is the semicolon or the tab, and no quote. */
    @Test
    void textsHoldNoFormulaForOtherSeparators() {
        CsvTable table = new CsvTable("a");
        table.text("x;=1+1").end().text("x\t -1; \"@y").end().text("3 ; -4, -5").end();
        assertEquals(
                "a\r\nx;'=1+1\r\n\"x\t '-1; \"\"'@y\"\r\n\"3 ; '-4, -5\"\r\n", table.toString());
    }

    @Test
    void whatSteersIsReplaced() {
        assertEquals(
                "a\r\nx\uFFFDy\uFFFD\uFFFDz\r\n",
                new CsvTable("a").text("x\u0000y\u202e\u009bz").end().toString());
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
                        "response-bands.csv",
                        "response-contour.csv",
                        "response-level.csv",
                        "sweep-harmonics.csv",
                        "ladder.csv",
                        "noise.csv",
                        "speed.csv",
                        "speed-readings.csv",
                        "speed-spectrum.csv",
                        "speed-components.csv",
                        "speed-passes.csv",
                        "transport-speed.csv",
                        "transport-spectrum.csv",
                        "transport-components.csv",
                        "crosstalk.csv",
                        "interchannel-delay.csv",
                        "dropouts.csv"),
                files.keySet());
        files.forEach((name, text) -> assertEquals(1, text.lines().count(), name));
    }

    /**
     * 4 curves of 121 points with 3 bands and one bump, 2 of them louder with 2 harmonics at 40
     * places, 4 ladders of 17 steps, 2 times 31 bands and 3 mains lines, 4 lines of speed.
     */
    @Test
    void everyPointIsARow() {
        Map<String, String> files = ReportWriter.csv(Scenario.before());
        assertEquals(1 + 4 * 121, files.get("response.csv").lines().count());
        assertEquals(1 + 4 * 3, files.get("response-bands.csv").lines().count());
        assertEquals(1 + 4, files.get("response-contour.csv").lines().count());
        assertEquals(1 + 2 * 121, files.get("response-level.csv").lines().count());
        assertEquals(1 + 2 * 2 * 40, files.get("sweep-harmonics.csv").lines().count());
        assertEquals(1 + 4 * 17, files.get("ladder.csv").lines().count());
        assertEquals(1 + 2 * 31 + 3, files.get("noise.csv").lines().count());
        assertEquals(1 + 600, files.get("speed.csv").lines().count());
        assertEquals(1 + 110, files.get("speed-readings.csv").lines().count());
        assertEquals(1 + 2000, files.get("speed-spectrum.csv").lines().count());
        assertEquals(1 + 4, files.get("speed-components.csv").lines().count());
        assertEquals(1 + 2 * 25, files.get("crosstalk.csv").lines().count());
        assertEquals(1 + 1200, files.get("interchannel-delay.csv").lines().count());
        assertEquals(1 + 3, files.get("dropouts.csv").lines().count());
    }

    @Test
    void aLadderStepIsWrittenInFull() {
        Quantity no = Scenario.UNKNOWN;
        LadderStep step =
                new LadderStep(
                        3,
                        2.98765,
                        0.1,
                        1.234567,
                        1.24,
                        0.0123,
                        0.004,
                        false,
                        new StepNoise(0.2, null, null, 0.0056, 0.01, true));
        LadderStep lost =
                new LadderStep(12, null, null, null, null, null, null, true, StepNoise.NOT_HEARD);
        Results results =
                Scenario.with(
                        Scenario.before().session(),
                        null,
                        null,
                        List.of(),
                        List.of(
                                new Distortion(
                                        "left",
                                        1000,
                                        List.of(step, lost),
                                        no,
                                        no,
                                        no,
                                        no,
                                        no,
                                        no,
                                        no,
                                        null,
                                        null)),
                        List.of(),
                        null,
                        List.of());
        String text = ReportWriter.csv(results).get("ladder.csv");
        assertTrue(
                text.contains(
                        "\r\nleft,1000,3,2.988,0.1,1.23457,1.24,0.012,0.004,no,0.2,,,0.0056,0.01,yes\r\n"),
                text);
        assertTrue(text.contains("\r\nleft,1000,12,,,,,,,yes,,,,,,no\r\n"), text);
        assertFalse(text.contains("null"), text);
    }
}
