package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Course;
import offtape.report.compare.History;
import offtape.report.result.Results;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;

class HistoryTest {

    private static final Instant FIRST = Instant.parse("2024-05-01T12:00:00Z");

    /** Each month a session, of a machine that goes from as bought to repaired and back again. */
    private static List<Results> sessions(int count) {
        List<Results> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double repaired = i < count / 2 ? 0.1 : 1 - 0.5 * (i - count / 2) / count;
            all.add(session(FIRST.plusSeconds(30L * 86_400 * i).toString(), 190.5, repaired));
        }
        return all;
    }

    private static Results session(String madeAt, double mmPerS, double repaired) {
        return Scenario.session(
                new Session(
                        "Kitchen-table two-track",
                        "a roll of long-play tape",
                        mmPerS,
                        "off-tape",
                        madeAt,
                        null,
                        "Offtape 0.1.0",
                        "a81e".repeat(16)),
                repaired);
    }

    private static Course flutter(History history) {
        return history.courses().stream()
                .filter(c -> c.name().startsWith("Wow and flutter"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void sessionsComeInOrderAndTrendsBeginAtTheService() {
        List<Results> shuffled = new ArrayList<>(sessions(12));
        Collections.reverse(shuffled);
        Instant service = FIRST.plusSeconds(30L * 86_400 * 6 - 86_400);
        History history = History.of(shuffled, service);
        assertEquals(12, history.sessions().size());
        assertEquals(0, history.days().get(0));
        assertEquals(330, history.days().get(11), 1e-9);
        assertEquals(179, history.servicedDays(), 1e-9);
        assertEquals(6, flutter(history).trend().sessions());
        assertEquals(Direction.WORSE, flutter(history).trend().direction());
        String page = ReportWriter.html(history);
        assertTrue(page.contains("Getting worse since the last service"), "in words");
        assertTrue(page.contains("since service"), "in the chart");
        assertEquals(page, ReportWriter.html(History.of(sessions(12), service)));
    }

    @Test
    void unlikeSessionsAreLeftOutWithTheReason() {
        List<Results> all = new ArrayList<>(sessions(3));
        all.add(session("2024-01-01T00:00:00Z", 95.25, 0));
        all.add(session("", 190.5, 0));
        History history = History.of(all, null);
        assertEquals(3, history.sessions().size());
        assertEquals(2, history.leftOut().size());
        assertTrue(history.leftOut().get(1).contains("tape speed"), history.leftOut().toString());
        assertThrows(UnusableInputException.class, () -> History.of(sessions(1), null));
    }

    /** A workshop's archive. */
    @Test
    void hundredsOfSessionsArePut() {
        History history = History.of(sessions(300), null);
        assertEquals(300, flutter(history).points().size());
        assertTrue(ReportWriter.html(history).length() < 2_000_000);
    }
}
