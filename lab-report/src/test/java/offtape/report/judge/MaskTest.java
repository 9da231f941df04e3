package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.report.result.Response;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A curve held against a band. */
class MaskTest {

    /** Far out below 100 Hz and above 5 kHz, between them −2 dB to 0.5 dB. */
    private static final Response CURVE =
            Measured.curve(
                    "left", "50:-10:0.1 100:-1:0.25 1000:0.5:0.5 5000:-2:0.375 10000:10:0.1");

    private static Mask mask(Limit limit) {
        return Mask.of(CURVE, limit).orElseThrow();
    }

    /**
     * From −2 ± 0.375 to 0.5 ± 0.5 it is 2.5 wide, ± 0.625 as 3, 4 and 5 are the sides of a right
     * triangle. Both ends of the band belong to it.
     */
    @ParameterizedTest
    @CsvSource({"3.25, PASS", "3.125, MARGINAL", "2.5, MARGINAL", "1.875, MARGINAL", "1.75, FAIL"})
    void aWidthIsFromTheLowestToTheHighest(double widthDb, Outcome.Kind kind) {
        Mask mask = mask(Limits.width(100, 5000, widthDb));
        assertEquals(2.5, mask.value());
        assertEquals(0.625, mask.uncertainty(), 1e-15);
        assertEquals(widthDb - 2.5, mask.outcome().room());
        assertEquals(kind, mask.outcome().kind());
    }

    @Test
    void theEndsOfTheBandBelongToIt() {
        assertEquals(1.5, mask(Limits.width(100, 1000, 3)).value(), "−1 at the lower end");
        assertEquals(2.5, mask(Limits.width(1000, 5000, 3)).value(), "−2 at the upper end");
        assertEquals(1.5, mask(Limits.width(51, 4999, 3)).value(), "neither −10 nor −2");
    }

    /**
     * By hand. Between −3 and 1 there is room of 2 at 100 Hz, 0.5 ± 0.5 at 1 kHz, which is
     * marginal, and 1 at 5 kHz. From below there is 2, 3.5 and 1; from above 2, 0.5 and 3. Against
     * −1.75 at least, 5 kHz lies 0.25 ± 0.375 out; against −1.25, 0.75.
     */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "-3, 1, 0.5, 0.5, MARGINAL",
                "-3, -, 1, -2, PASS",
                "-, 1, 0.5, 0.5, MARGINAL",
                "-, 1.25, 0.75, 0.5, PASS",
                "-1.75, -, -0.25, -2, MARGINAL",
                "-1.25, 9, -0.75, -2, FAIL",
                "-9, -0.25, -0.75, 0.5, FAIL"
            })
    void theLevelDecidesThatIsLeastSureToKeepToIt(
            Double low, Double high, double room, double level, Outcome.Kind kind) {
        Mask mask = mask(Limits.levels(100, 5000, low, high));
        assertEquals(level, mask.value());
        assertEquals(level == 0.5 ? 0.5 : 0.375, mask.uncertainty());
        assertEquals(new Outcome(kind, room, mask.outcome().wrongPercent()), mask.outcome());
    }

    /** Within 3 % of either end, 103 Hz and 9.7 kHz, and with at least two points in the band. */
    @ParameterizedTest
    @CsvSource({
        "103:0:1 1000:0:1 9700:0:1, true",
        "104:0:1 1000:0:1 9700:0:1, false",
        "103:0:1 1000:0:1 9699:0:1, false",
        "50:0:1 1000:0:1 20000:0:1, false",
        "50:0:1 100:0:1 10000:0:1 20000:0:1, true",
        "50:0:1 20000:0:1, false"
    })
    void aCurveMustReachOverTheBand(String points, boolean reaches) {
        Response curve = Measured.curve("left", points);
        assertEquals(reaches, Mask.of(curve, Limits.width(100, 10_000, 3)).isPresent());
        assertEquals(reaches, Mask.of(curve, Limits.levels(100, 10_000, -3.0, 3.0)).isPresent());
    }

    /** Each channel by its own curve, and why one is not told. */
    @Test
    void aChannelWhoseCurveEndsTooSoonIsUnknown() {
        Measured session =
                Measured.whole()
                        .withResponse(CURVE, Measured.curve("right", "100:0:0.1 4000:0:0.1"));
        var checks = Judge.checks(session.results(), Limits.set(Limits.width(100, 5000, 3.25)));
        Verdict.Check left = checks.get(0);
        assertEquals("Frequency response, left", left.quantity());
        assertEquals(2.5, left.value());
        assertEquals("pass", left.outcome());
        assertEquals("100 Hz to 5000 Hz within a width of 3.25 dB", left.limit());
        Verdict.Check right = checks.get(1);
        assertEquals("Frequency response, right", right.quantity());
        assertEquals("unknown", right.outcome());
        assertEquals("The response does not reach over the band.", right.reason());
        assertFalse(right.limit().isEmpty());
        assertTrue(right.value() == null && right.uncertainty() == null);
    }
}
