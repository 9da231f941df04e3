package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.HealthNote;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.Passes;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Readings of several replays put together. */
class PassMeasureTest {

    private static final HealthNote EARLIER =
            new HealthNote("note", "earlier", "It was said before.");

    private static Quantity percent(double value, double uncertainty) {
        return Quantity.known(value, "%", uncertainty);
    }

    private static PassFigures figures(Quantity q) {
        return PassFigures.of(List.of(new PassFigures(q, q, q, q, q, q, q, q)), all -> all.get(0));
    }

    private static PassReading reading(
            String file, Quantity rate, Quantity peak, Double toneHz, Double seconds) {
        Pass pass = new Pass(file, "0".repeat(64), rate, figures(peak));
        return new PassReading(pass, toneHz, seconds, null, List.of());
    }

    private static PassReading reading(String file, double rate, double peak, double seconds) {
        return reading(file, percent(rate, 0.005), percent(peak, 0.01), 3150.0, seconds);
    }

    private static Results added(PassReading... replays) {
        Speed first = Speed.unknown("It is not asked for.");
        Results results =
                new Results(
                        Results.FORMAT,
                        Results.VERSION,
                        new Session("a machine", null, 190.5, "two-pass", "", null, null, null),
                        null,
                        first,
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        List.of(),
                        List.of(EARLIER),
                        Verdict.open("No limits were applied."),
                        null);
        return PassMeasure.added(results, List.of(replays));
    }

    private static List<String> codes(Results results) {
        List<String> codes = new ArrayList<>();
        results.health().forEach(n -> codes.add(n.code()));
        return codes;
    }

    /** 0.1 and 0.3 %: mean 0.2, highest 0.3, spread 0.2. Without a course nothing is parted. */
    @Test
    void theSessionHasTheMeanOfAllReplays() {
        Results both = added(reading("a.wav", 0, 0.1, 30), reading("b.wav", 0.1, 0.3, 31));
        Passes passes = both.speed().passes();
        assertEquals(0.2, both.speed().weightedPeak().value(), 1e-12);
        assertEquals(0.2, passes.mean().wowRms().value(), 1e-12);
        assertEquals(0.3, passes.highest().weightedPeak().value(), 0);
        assertEquals(0.2, passes.spread().flutterRms().value(), 1e-12);
        assertEquals(
                "The readings of wow and flutter are the mean of 2 replays; every other figure is"
                        + " that of the first, a.wav.",
                passes.statement());
        assertEquals("b.wav", passes.readings().get(1).file());
        assertNull(passes.separatedSeconds());
        assertEquals(List.of(), passes.notes());
        assertEquals(
                "Fewer than two replays hold the speed tone.",
                passes.read().weightedRms().reason());
        assertEquals(List.of(EARLIER), both.health());
    }

    /**
     * Readings of less than nine tenths of the longest, or of another tone, are not comparable:
     * they are left out of the mean, and that is said.
     */
    @ParameterizedTest
    @CsvSource({"3150, 27, true", "3150, 26.99, false", "3000, 29.5, false", "3150, 30, true"})
    void onlyReadingsOfTheSameToneCount(double toneHz, double seconds, boolean counts) {
        Results all =
                added(
                        reading("a.wav", 0, 0.1, 29),
                        reading("b.wav", percent(0, 0.01), percent(0.4, 0.01), toneHz, seconds),
                        reading("c.wav", 0, 0.1, 30));
        Passes passes = all.speed().passes();
        assertEquals(counts ? 0.2 : 0.1, passes.mean().weightedPeak().value(), 1e-12);
        assertEquals(
                counts,
                passes.statement().startsWith("The readings of wow and flutter are the mean of 3"));
        assertEquals(
                counts ? List.of("earlier") : List.of("earlier", "replay-without-readings"),
                codes(all));
        if (!counts) {
            assertEquals(
                    "The readings of wow and flutter are the mean of the 2 of 3 replays that have"
                            + " them; every other figure is that of the first, a.wav.",
                    passes.statement());
            assertEquals(
                    new HealthNote(
                            "warning",
                            "replay-without-readings",
                            "b.wav has no readings of wow and flutter: The speed tone is not whole"
                                    + " in this replay."),
                    all.health().get(1));
            assertEquals(0, passes.readings().get(1).rate().value(), 0);
        }
    }

    /** A replay in which no tone was heard has a reason of its own, which is kept. */
    @Test
    void aReplayWithoutATone() {
        Quantity none = Quantity.unknown("The tone was not heard.");
        PassReading lacking = reading("b.wav", none, none, null, null);
        assertEquals(0, lacking.seconds(), 0);
        assertTrue(lacking.course().isEmpty());
        assertEquals(12.5, reading("a.wav", 0, 0.1, 12.5).seconds(), 0);
        Results all = added(reading("a.wav", 0, 0.1, 30), lacking);
        assertEquals(List.of("earlier", "replay-without-readings"), codes(all));
        assertEquals(0.1, all.speed().weightedPeak().value(), 1e-12);
    }

    /** Courses are parted if there are any, however short: these are told to be too short. */
    @Test
    void coursesAreParted() {
        List<PassReading> both = new ArrayList<>();
        for (int n = 0; n < 2; n++) {
            TapeCourse course =
                    TapeCourse.of(Replay.tape(1000, 3).again(0.3 + 0.1 * n, 1).play())
                            .orElseThrow();
            Pass pass = new Pass("a.wav", "0".repeat(64), percent(0, 0), figures(percent(0.1, 0)));
            both.add(new PassReading(pass, 1000.0, 2.7, course, List.of()));
        }
        assertEquals(
                "The replays have less than 5 s of the speed tone in common.",
                added(both.get(0), both.get(1)).speed().passes().written().weightedRms().reason());
    }

    @Test
    void noReplayHasATone() {
        Quantity none = Quantity.unknown("The tone was not heard.");
        Results all =
                added(
                        reading("a.wav", none, none, null, null),
                        reading("b.wav", none, none, null, null));
        assertEquals(
                "No replay has readings of wow and flutter; every other figure is that of the"
                        + " first, a.wav.",
                all.speed().passes().statement());
        assertEquals("The tone was not heard.", all.speed().weightedPeak().reason());
    }

    /**
     * One machine repeats its speed within 0.3 %. What is beyond that must be beyond what both
     * speeds are known within, √(0.03² + 0.04²) = 0.05 %, too.
     */
    @ParameterizedTest
    @CsvSource({"0.34, false", "0.36, true"})
    void unequalSpeedsAreSaid(double apart, boolean said) {
        Results all =
                added(
                        reading("b.wav", percent(1.004, 0), percent(0.1, 0), 3150.0, 30.0),
                        reading(
                                "c.wav",
                                percent(1.1 + apart - 0.1, 0.04),
                                percent(0.1, 0),
                                3150.0,
                                30.0),
                        reading("a.wav", percent(1, 0.03), percent(0.1, 0), 3150.0, 30.0));
        assertEquals(
                said ? List.of("earlier", "replays-differ-in-speed") : List.of("earlier"),
                codes(all));
        if (said) {
            assertEquals("warning", all.health().get(1).severity());
            assertTrue(
                    all.health()
                            .get(1)
                            .message()
                            .startsWith(
                                    "The replays run at unequal speeds: a.wav at +1.00 %, c.wav at"
                                            + " +1.36 %."),
                    all.health().get(1).message());
        }
    }

    /** −0.004 % is told as +0.00 %, not as a minus of nothing; +0.996 % as +1.00 %. */
    @Test
    void speedsAreToldRounded() {
        Results all = added(reading("a.wav", 0.996, 0.1, 30), reading("b.wav", -0.004, 0.1, 30));
        assertTrue(
                all.health()
                        .get(1)
                        .message()
                        .startsWith(
                                "The replays run at unequal speeds: b.wav at +0.00 %, a.wav at"
                                        + " +1.00 %."),
                all.health().get(1).message());
    }

    /** A speed that is not known is held against nothing. */
    @Test
    void oneSpeedAloneIsNotUnequal() {
        Quantity none = Quantity.unknown("It was not heard.");
        Results all =
                added(
                        reading("a.wav", none, percent(0.1, 0), 3150.0, 30.0),
                        reading("b.wav", 5, 0.1, 30));
        assertEquals(List.of("earlier"), codes(all));
        assertFalse(all.speed().passes().readings().get(0).rate().isKnown());
    }

    /** What was to be said of a file is said among the rest. */
    @Test
    void remarksOnAFileAreKept() {
        PassReading one =
                new PassReading(
                        new Pass("b.wav", "0".repeat(64), percent(0, 0), figures(percent(0.1, 0))),
                        3150.0,
                        30.0,
                        null,
                        List.of("Its header is odd."));
        Results all = added(reading("a.wav", 0, 0.1, 30), one);
        assertEquals(
                List.of(EARLIER, new HealthNote("warning", "file", "Its header is odd.")),
                all.health());
    }
}
