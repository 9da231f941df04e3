package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.reference.Source;
import offtape.report.result.Results;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures held against limits. */
class JudgeTest {

    private static final Results WHOLE = Measured.whole().results();

    private static List<Verdict.Check> checks(Results results, Limit... limits) {
        return Judge.judged(results, Limits.set(limits)).verdict().checks();
    }

    /**
     * The figures are those put into the session. What leaks from right to left is heard on the
     * left. From noise at −50 dB to an output level of 5 dB it is 55 dB, and the uncertainties of
     * 0.3 dB and 0.4 dB are independent: 0.5 dB.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed-deviation|0|Speed deviation|0.4|0.05|%",
                "wow-and-flutter|0|Wow and flutter, weighted peak|0.15|0.01|%",
                "balance|0|Balance, right re left|1.25|0.25|dB",
                "interchannel-delay|0|Interchannel delay|-12|3|µs",
                "crosstalk|0|Crosstalk at 1 kHz, left|-35|2|dB",
                "crosstalk|1|Crosstalk at 1 kHz, right|-40|1|dB",
                "level-at-3-percent|0|Record level at 3 % K3, left|6|0.5|dB",
                "level-at-3-percent|1|Record level at 3 % K3, right|4|0.6|dB",
                "weighted-noise-distance|0|From A-weighted noise to 3 % K3, left|58|0.7|dB",
                "weighted-noise-distance|1|From A-weighted noise to 3 % K3, right|55|0.8|dB",
                "noise-distance|0|From unweighted noise to 3 % K3, left|55|0.5|dB",
                "noise-distance|1|From unweighted noise to 3 % K3, right|50|0.5|dB"
            })
    void eachQuantityIsTakenFromItsFigure(
            String quantity,
            int place,
            String name,
            double value,
            double uncertainty,
            String unit) {
        List<Verdict.Check> checks = checks(WHOLE, Limits.of(quantity, null, 1000.0));
        assertEquals(Judged.named(quantity).orElseThrow().isPerChannel() ? 2 : 1, checks.size());
        Verdict.Check check = checks.get(place);
        assertEquals(name, check.quantity());
        assertEquals(value, check.value(), 1e-12);
        assertEquals(uncertainty, check.uncertainty(), 1e-12);
        assertEquals(unit, check.unit());
        assertEquals("pass", check.outcome());
        assertNull(check.reason());
    }

    /** Those that are one figure of the machine are checked once, the others for each channel. */
    @ParameterizedTest
    @CsvSource({"balance, 1", "wow-and-flutter, 1", "crosstalk, 2", "noise-distance, 2"})
    void aChannelHasItsOwnCheckIfItHasItsOwnFigure(String quantity, int count) {
        assertEquals(count, checks(WHOLE, Limits.of(quantity, null, 1000.0)).size());
    }

    /**
     * The balance is 1.25 dB, sure within 0.25 dB with k = 2, so that one standard uncertainty is
     * 0.125 dB. The chance of being wrong is the tail of the normal distribution beyond 0, 1, 2, 4
     * and 6 of them.
     */
    @ParameterizedTest
    @Source("JCGM 106, 8.3; tails of the standard normal distribution")
    @CsvSource(
            nullValues = "-",
            value = {
                "-, 1.75, pass, 0.00316712",
                "-, 1.5, marginal, 2.275013",
                "-, 1.375, marginal, 15.865525",
                "-, 1.25, marginal, 50",
                "-, 1.125, marginal, 15.865525",
                "-, 1, marginal, 2.275013",
                "-, 0.75, fail, 0.00316712",
                "0.75, -, pass, 0.00316712",
                "1, -, marginal, 2.275013",
                "1.25, -, marginal, 50",
                "1.5, -, marginal, 2.275013",
                "1.75, -, fail, 0.00316712",
                "0.5, 2, pass, 0.0000000986588",
                "0.75, 2, pass, 0.00316712",
                "0.5, 1.375, marginal, 15.865525",
                "-3, 0.75, fail, 0.00316712",
                "1.75, 9, fail, 0.00316712"
            })
    void aLimitIsMetOrFailedByMoreThanTheUncertainty(
            Double least, Double most, String outcome, double wrongPercent) {
        Results judged = Judge.judged(WHOLE, Limits.set(Limits.of("balance", least, most)));
        Verdict.Check check = judged.verdict().checks().get(0);
        assertEquals(outcome, check.outcome());
        assertEquals(wrongPercent, check.wrongPercent(), 1e-5 * wrongPercent);
        assertEquals(outcome.equals("fail"), Judge.isFailed(judged));
    }

    /** One failed limit among others is enough. */
    @Test
    void aFailIsSeenWhereverItStands() {
        Limit met = Limits.of("balance", null, 9.0);
        Limit failed = Limits.of("wow-and-flutter", null, 0.1);
        assertTrue(Judge.isFailed(Judge.judged(WHOLE, Limits.set(met, failed, met))));
        assertFalse(Judge.isFailed(Judge.judged(WHOLE, Limits.set(met, met))));
    }

    /**
     * What is not known is said with its reason; a distance from noise lacks the noise first, and
     * the ladder second.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed-deviation|Not measured in this session.",
                "crosstalk|Not measured in this session.",
                "level-at-3-percent|No ladder of tones of this channel was measured.",
                "weighted-noise-distance|No silence of this channel was measured.",
                "noise-distance|No silence of this channel was measured."
            })
    void whatWasNotMeasuredIsUnknown(String quantity, String reason) {
        Verdict.Check check =
                checks(Measured.nothing().results(), Limits.of(quantity, null, 1.0)).get(0);
        assertEquals("unknown", check.outcome());
        assertEquals(reason, check.reason());
        assertNull(check.value());
        assertNull(check.uncertainty());
        assertNull(check.wrongPercent());
    }

    @Test
    void aDistanceFromNoiseNeedsBothItsEnds() {
        Limit limit = Limits.of("noise-distance", 40.0, null);
        Measured noLadder = Measured.whole().withDistortion();
        assertEquals(
                "No ladder of tones of this channel was measured.",
                checks(noLadder.results(), limit).get(0).reason());
        Measured drowned =
                Measured.whole()
                        .withNoise(
                                Measured.noise("left", Measured.UNKNOWN, null, null),
                                Measured.noise("right", Measured.db(-47, 0.4), null, null));
        List<Verdict.Check> checks = checks(drowned.results(), limit);
        assertEquals("It was drowned.", checks.get(0).reason());
        assertEquals(50, checks.get(1).value(), 1e-12);
    }

    /** Name of the set and clause; what is left of the verdict is kept. */
    @Test
    void aCheckSaysWhereItsLimitIsFrom() {
        LimitSet set =
                Limits.set(
                        Limits.at(190.5, "wow-and-flutter", 0.2, "clause 7"),
                        Limits.at(381, "wow-and-flutter", 0.1, "clause 8"),
                        Limits.of("balance", -2.0, 2.0));
        Verdict verdict = Judge.judged(WHOLE, set).verdict();
        assertEquals(2, verdict.checks().size());
        assertEquals("house rule, clause 7", verdict.checks().get(0).source());
        assertEquals("at most 0.2 %", verdict.checks().get(0).limit());
        assertEquals("house rule", verdict.checks().get(1).source());
        assertEquals("± 2 dB", verdict.checks().get(1).limit());
        assertEquals(List.of("The limits of \"house rule\": invented."), verdict.because());
        assertTrue(verdict.reason().contains("\"house rule\""), verdict.reason());
        assertNull(verdict.decision());
    }
}
