package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import offtape.report.compare.Comparison;
import offtape.report.compare.Pairing;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;

/** The words of a page with two sessions: of one machine, or of two. */
class PairPageTest {

    private static final Results WORN = Pairs.worn("Deck A");
    private static final Results FINE = Pairs.fine("Deck A");
    private static final Results OTHER = Pairs.fine("Deck B");

    private static String page(Results first, Results second) {
        return ReportWriter.html(Comparison.of(first, second, List.of()), first, second);
    }

    private static void assertInOrder(String page, List<String> parts) {
        int last = 0;
        for (String part : parts) {
            int at = page.indexOf(part, last);
            assertTrue(at >= 0, part + " is missing or comes too early");
            last = at;
        }
    }

    @Test
    void aServiceHasBeforeAndAfter() {
        assertInOrder(
                page(WORN, FINE),
                List.of(
                        "<h1>Deck A: before and after</h1>",
                        "Before: Deck A, 14 March 2026",
                        "Decision: service before, keep after.",
                        ">Better: ",
                        "Faults gone: Fault dirty-head (right).",
                        "Faults still there: Fault capstan.",
                        ">Before</th>",
                        "▲\u00a0better",
                        "id=\"faults\"",
                        ">What became of it</th>",
                        "very likely, 87\u00a0%",
                        "under 15\u00a0%",
                        "○\u00a0gone",
                        "≈\u00a0may have gone",
                        "●\u00a0still there",
                        "Frequency response before and after",
                        "Left before"));
    }

    @Test
    void twoMachinesHaveNames() {
        String page = page(WORN, OTHER);
        assertInOrder(
                page,
                List.of(
                        "Two machines side by side",
                        "<h1>Deck A and Deck B</h1>",
                        "Deck A, 14 March 2026",
                        "Deck B, 28 March 2026",
                        "Decision: service for Deck A, keep for Deck B.",
                        ">Better on Deck B: ",
                        "Faults, Deck A only: Fault dirty-head (right).",
                        "Faults, both: Fault capstan.",
                        ">Deck A</th>",
                        ">Deck B</th>",
                        ">Which is better</th>",
                        "►\u00a0Deck B",
                        ">Which has it</th>",
                        "◄\u00a0Deck A only",
                        "≈\u00a0perhaps Deck A",
                        "Frequency response of both machines",
                        "Left, Deck A",
                        "Deck A against Deck B: 15.20"));
        String words =
                page.replaceAll("(?s)<style>.*?</style>|<script.*</script>|<[^>]*>", " ")
                        .replace("louder before the tape", "louder until the tape");
        for (String word :
                List.of("before", "after", "worse", "changed", "gone", "service since")) {
            assertFalse(
                    Pattern.compile("(?i)\\b" + word + "\\b").matcher(words).find(),
                    "says " + word);
        }
    }

    @Test
    void namesOfAnyLengthLeaveRoomForFigures() {
        String start = "A machine whose owner likes words, ";
        Results one = Pairs.worn(start + "one");
        Results two = Pairs.fine(start + "two");
        assertInOrder(
                page(one, two),
                List.of(
                        start + "one and " + start + "two</h1>",
                        ">First: A machine",
                        ">Second: A",
                        ">First</th>",
                        ">Second</th>"));
        String cut = page(one, OTHER);
        assertTrue(cut.contains(">A machine whose owner l…</th>"), "head of a column");
        assertTrue(cut.contains("Left, A machine whose…"), "a curve");
    }

    /** Whichever is given first, the same machine is the better one. */
    @Test
    void noMachineComesFirst() {
        assertTrue(page(OTHER, WORN).contains("◄\u00a0Deck B"));
        assertFalse(page(OTHER, WORN).contains("►\u00a0Deck A</td>"));
    }

    @Test
    void theUsersWordCountsMoreThanTheNames() {
        Comparison one = Comparison.of(WORN, OTHER, List.of(), Pairing.SERVICE);
        String page = ReportWriter.html(one, WORN, OTHER);
        assertTrue(page.contains("<h1>Deck A, then Deck B: before and after</h1>"));
        assertTrue(page.contains("The machines are not named alike: these may be two."));
        Comparison two = Comparison.of(WORN, FINE, List.of(), Pairing.MACHINES);
        assertTrue(ReportWriter.html(two, WORN, FINE).contains("►\u00a0Deck A (second)"));
    }

    @Test
    void whatWasNotLookedForIsSaid() {
        Results bare = Pairs.fine("Deck A").withVerdict(Pairs.verdict(null, null, List.of()));
        String page = page(WORN, bare);
        assertInOrder(
                page,
                List.of(
                        "Decision: service before, not decided after.",
                        "not named",
                        "?\u00a0cannot be told",
                        "Faults were not looked for in the second session."));
        assertEquals(2, page.split("looked for in the second", -1).length, "the reason, once");
        assertFalse(page.contains("Faults gone"));
        assertTrue(page(bare, bare).contains("Faults were not looked for in either session."));
        assertEquals(page(WORN, bare), page(WORN, bare));
    }
}
