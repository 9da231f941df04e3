package offtape.report.cost;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.report.cost.Bill.Worth;
import offtape.report.fault.FaultNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sums by hand, and files that say what cannot be. */
class EconomicsTest {

    @TempDir private Path folder;

    private Economics read(String text) throws IOException {
        return Economics.of(Files.writeString(folder.resolve("costs.json"), text));
    }

    private Economics costs(String members) throws IOException {
        return read(
                "{\"format\": \"offtape-economics\", \"version\": 1, \"currency\": \"EUR\", "
                        + members
                        + "}");
    }

    private static FaultNote fault(String code, String effort) {
        return new FaultNote(
                code,
                "The " + code,
                "machine",
                List.of(),
                List.of(),
                "",
                "",
                List.of(),
                "",
                "",
                effort,
                "",
                "",
                List.of());
    }

    private static final String REPAIRS =
            "\"paid\": 100, \"valueOfAGoodOne\": 400, \"hourlyRate\": 50, \"repairs\": ["
                    + "{\"fault\": \"pinch-roller\", \"partsLow\": 20, \"partsHigh\": 40,"
                    + " \"hoursLow\": 0.5, \"hoursHigh\": 1.5}], \"otherRepairs\": ["
                    + "{\"name\": \"carriage\", \"partsLow\": 10, \"partsHigh\": 10}]";

    /** 20 + 0.5 · 50 + 10 = 55 at least, 40 + 1.5 · 50 + 10 = 125 at most. */
    @Test
    void partsAndHoursAddUp() throws IOException {
        Bill bill = Bill.of(costs(REPAIRS), List.of(fault("pinch-roller", "replace")), false);
        assertEquals(new Span(55, 125.0), bill.repairs());
        assertEquals(new Span(155, 225.0), bill.total());
        assertEquals(Worth.YES, bill.worth());
        assertEquals(List.of(), bill.remarks());
        assertEquals(
                "Getting it right costs 55 to 125 EUR (0.5 to 1.5 hours of work). With the 100 EUR"
                        + " for the machine that is 155 to 225 EUR; a good one is worth 400 EUR.",
                bill.words().get(0));
    }

    /** Own hours cost nothing: 20 + 10 to 40 + 10, and the hours are told all the same. */
    @Test
    void ownHoursAreFreeIfSo() throws IOException {
        Economics own = costs(REPAIRS.replace("\"hourlyRate\": 50", "\"ownHoursFree\": true"));
        Bill bill = Bill.of(own, List.of(fault("pinch-roller", "replace")), false);
        assertEquals(new Span(30, 50.0), bill.repairs());
        assertEquals(new Span(0.5, 1.5), bill.hours());
    }

    /** Cleaning takes 0.25 to 0.5 h, that is 12.5 to 25, and with the carriage 22.5 to 35. */
    @Test
    void hoursThatAreNotGivenAreTypicalOnesAndCalledSo() throws IOException {
        Bill bill = Bill.of(costs(REPAIRS), List.of(fault("dirty-head", "clean")), false);
        assertEquals(new Span(22.5, 35.0), bill.repairs());
        assertTrue(
                bill.remarks().get(0).contains("typical ones (common practice, no source)"),
                bill.remarks().toString());
    }

    /** New heads: 1 h or more and parts of unknown price, so at least 50 + 10. */
    @Test
    void partsWithoutAPriceLeaveTheSumOpen() throws IOException {
        Bill bill = Bill.of(costs(REPAIRS), List.of(fault("worn-head", "replace")), false);
        assertEquals(60, bill.repairs().low());
        assertNull(bill.repairs().high());
        assertEquals(Worth.OPEN, bill.worth());
        assertTrue(bill.words().toString().contains("at least 60 EUR"));
        assertTrue(bill.words().toString().contains("ask for a price before any work begins"));
    }

    /** The total is 155 to 225, its middle 190. */
    @ParameterizedTest
    @CsvSource({
        "225, 0, YES",
        "224, 0, LIKELY",
        "190, 0, LIKELY",
        "189, 0, HARDLY",
        "155, 0, HARDLY",
        "154, 0, NO",
        "100, 54.99, NO",
        "100, 55, HARDLY",
        "100, 125, YES"
    })
    void costIsSetAgainstValueAndMargin(double value, double margin, Worth worth)
            throws IOException {
        Economics costs =
                costs(
                        REPAIRS.replace(
                                "\"valueOfAGoodOne\": 400",
                                "\"margin\": " + margin + ", \"valueOfAGoodOne\": " + value));
        Bill bill = Bill.of(costs, List.of(fault("pinch-roller", "replace")), false);
        assertEquals(worth, bill.worth());
        assertFalse(bill.words().get(1).isBlank());
    }

    @Test
    void theFormCanBeRead() throws IOException {
        Economics form = read(Economics.template());
        assertEquals(3, form.repairs().size());
        assertTrue(form.canMend("worn-head"));
        assertTrue(form.canMendUnknown());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"paid\": -5, \"valueOfAGoodOne\": 1, \"hourlyRate\": 1|"
                        + "\"paid\" is -5; it must lie between 0 and 999999999 EUR.",
                "\"paid\": \"much\", \"valueOfAGoodOne\": 1, \"hourlyRate\": 1|"
                        + "paid: the value is not of the kind that belongs here (line 1, column 74).",
                "\"paid\": 5, \"hourlyRate\": 1|"
                        + "A file of costs says what was \"paid\" (0 if nothing) and the"
                        + " \"valueOfAGoodOne\".",
                "\"paid\": 5, \"valueOfAGoodOne\": 1|"
                        + "A file of costs gives the \"hourlyRate\", or says that \"ownHoursFree\" is"
                        + " true.",
                "\"paid\": 5, \"valueOfAGoodOne\": 1, \"ownHoursFree\": true, \"repairs\":"
                        + " [{\"fault\": \"belt\", \"hoursLow\": 2}]|"
                        + "repairs[0]: \"hoursLow\" and \"hoursHigh\" are given together.",
                "\"paid\": 5, \"valueOfAGoodOne\": 1, \"ownHoursFree\": true, \"repairs\":"
                        + " [{\"fault\": \"belt\", \"hoursLow\": 2, \"hoursHigh\": 1}]|"
                        + "repairs[0]: \"hoursLow\" is more than \"hoursHigh\".",
                "\"paid\": 5, \"valueOfAGoodOne\": 1, \"ownHoursFree\": true, \"repairs\":"
                        + " [{\"fault\": \"belt\"}, {\"fault\": \"belt\"}]|"
                        + "A fault has more than one entry in \"repairs\".",
                "\"paid\": 5, \"valueOfAGoodOne\": 1, \"hourlyRate\": 1, \"margn\": 5|"
                        + "the member \"margn\" is not known. Perhaps \"margin\" is meant. Known here:"
                        + " currency, format, hourlyRate, margin, note, otherRepairs, ownHoursFree,"
                        + " paid, repairable, repairs, valueOfAGoodOne, version."
            })
    void whatCannotBeIsRefused(String members, String sentence) {
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> costs(members));
        assertEquals(folder.resolve("costs.json") + ": " + sentence, e.getMessage());
    }

    @Test
    void aFaultThatIsNotKnownIsRefusedWithThoseThatAre() {
        UnusableInputException e =
                assertThrows(
                        UnusableInputException.class,
                        () ->
                                costs(
                                        "\"paid\": 5, \"valueOfAGoodOne\": 1, \"hourlyRate\": 1,"
                                                + " \"repairs\": [{\"fault\": \"worn-haed\"}]"));
        assertTrue(
                e.getMessage()
                        .contains(
                                "repairs[0]: \"worn-haed\" is no fault that is known. Perhaps"
                                        + " \"worn-head\" is meant. Known are dirty-head, worn-head,"),
                e.getMessage());
    }
}
