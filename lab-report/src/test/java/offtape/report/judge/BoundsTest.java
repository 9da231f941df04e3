package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BoundsTest {

    /**
     * By hand, for the levels within the band: what spans a to b fits into a width w whose lower
     * end lies from b − w to a. Left −1 to 2, right 0 to 3, width 5: −3 to −1 and −2 to 0, so −2 to
     * −1 in common, the middle −1.5. Width 4: −2 to −1 and −1 to 0, only −1. Width 3.5: −1.5 to −1
     * and −0.5 to 0, nothing in common, so down from the highest, 3. Left alone in width 2 is too
     * wide: down from 2. Beside a curve that is too wide only the other counts: in width 4 from −2
     * to −1, in width 3 exactly −1.
     */
    @ParameterizedTest
    @CsvSource({
        "-1 2, 0 3, 5, -1.5",
        "-1 2, 0 3, 4, -1",
        "-1 2, 0 3, 3.5, -0.5",
        "-1 2, , 2, 0",
        "-1 2, 0 9, 4, -1.5",
        "-9 0, 0 9, 4, 5",
        "-1 2, -5 4, 4, -1.5",
        "-1 2, -5 4, 3, -1"
    })
    void aWidthLiesWhereTheCurvesFit(String left, String right, double width, double low) {
        List<Response> curves = new ArrayList<>(List.of(curve("left", left)));
        if (right != null) {
            curves.add(curve("right", right));
        }
        Bounds bounds = Bounds.of(set(width(width)), results(curves, null)).get(0);
        assertEquals(low, bounds.low(), 1e-12);
        assertEquals(low + width, bounds.high(), 1e-12);
        assertTrue(bounds.isPlaced());
    }

    /** Without a curve it lies about 0 dB. */
    @Test
    void withoutACurveAWidthLiesAboutZero() {
        Bounds bounds = Bounds.of(set(width(6)), results(List.of(), null)).get(0);
        assertEquals(-3, bounds.low());
        assertEquals(3, bounds.high());
    }

    /** So it does without one in the band; a point at either end of the band is in it. */
    @Test
    void aCurveBesideTheBandDoesNotPlaceAWidth() {
        List<Response> beside = List.of(Measured.curve("left", "50:9:1 99:9:1 5001:9:1"));
        assertEquals(-3, Bounds.of(set(width(6)), results(beside, null)).get(0).low());
        List<Response> ends = List.of(Measured.curve("left", "99:9:1 100:1:1 5000:3:1 5001:9:1"));
        assertEquals(-1, Bounds.of(set(width(6)), results(ends, null)).get(0).low(), 1e-12);
    }

    @Test
    void boundsAreThoseOfTheLimit() {
        LimitSet set =
                set(
                        Limits.levels(40, 12_500, -3.0, 2.0),
                        Limits.of("balance", -1.0, 1.5),
                        Limits.of("crosstalk", null, -40.0),
                        Limits.of("level-at-3-percent", 6.0, null));
        assertEquals(
                List.of(
                        new Bounds("response", 40.0, 12_500.0, -3.0, 2.0, false),
                        new Bounds("balance", null, null, -1.0, 1.5, false),
                        new Bounds("crosstalk", null, null, null, -40.0, false),
                        new Bounds("level-at-3-percent", null, null, 6.0, null, false)),
                Bounds.of(set, results(List.of(), null)));
    }

    @Test
    void limitsOfOtherTapeSpeedsAreLeftOut() {
        LimitSet set = set(flutter(0.06, 381), flutter(0.08, 190.5));
        List<Bounds> bounds = Bounds.of(set, results(List.of(), 190.5));
        assertEquals(1, bounds.size());
        assertEquals(0.08, bounds.get(0).high());
        assertEquals(Bounds.WOW_AND_FLUTTER, bounds.get(0).quantity());
    }

    @Test
    void noSetHasNoBounds() {
        assertEquals(List.of(), Bounds.of(null, results(List.of(), null)));
    }

    /** Levels at 100 Hz and 5 kHz; outside the band it falls far out of any. */
    private static Response curve(String channel, String levels) {
        String[] ends = levels.split(" ");
        double[] db = {-40, Double.parseDouble(ends[0]), Double.parseDouble(ends[1]), -40};
        return new Response(
                channel,
                -20,
                new double[] {50, 100, 5000, 20_000},
                db,
                new double[] {0.1, 0.1, 0.1, 0.1},
                null,
                null,
                null,
                100,
                5000,
                List.of(),
                List.of(),
                null,
                List.of(),
                null);
    }

    private static Limit width(double db) {
        return new Limit("response", null, null, 100.0, 5000.0, null, null, db, null, null);
    }

    private static Limit flutter(double most, double mmPerS) {
        return new Limit("wow-and-flutter", null, most, null, null, null, null, null, mmPerS, null);
    }

    private static LimitSet set(Limit... limits) {
        return new LimitSet(
                LimitSet.FORMAT, LimitSet.VERSION, "house rule", "invented", List.of(limits));
    }

    private static Results results(List<Response> response, Double mmPerS) {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                new Session("a machine", null, mmPerS, null, "", null, null, null),
                null,
                null,
                response,
                List.of(),
                List.of(),
                null,
                List.of(),
                List.of(),
                Verdict.open("No limits were applied."),
                null,
                null,
                null,
                List.of());
    }
}
