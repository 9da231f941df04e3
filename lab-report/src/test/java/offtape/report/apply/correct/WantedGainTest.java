package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WantedGainTest {

    private static final BoostLimit LIMIT = new BoostLimit(12, 12);

    private static MeasuredCurve measured(DoubleUnaryOperator db, double uncertaintyDb) {
        double[] hz = Grid.over(16, 22_000);
        double[] doubt = new double[hz.length];
        Arrays.fill(doubt, uncertaintyDb);
        return new MeasuredCurve(hz, Arrays.stream(hz).map(db).toArray(), doubt);
    }

    /** By the words of the limit: whole up to 11 dB, 12 dB at most, then down by 1 dB for 1 dB. */
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "5, 5",
        "11, 11",
        "12, 11.75",
        "13, 12",
        "15, 11",
        "20, 6",
        "26, 0",
        "60, 0",
        "-5, -5",
        "-11, -11",
        "-12, -11.75",
        "-13, -12",
        "-60, -12"
    })
    void theLimitBendsSoftlyAndGivesUpWhereNothingReturns(double wanted, double given) {
        assertEquals(given, LIMIT.given(wanted), 1e-12);
    }

    @Test
    void noBoostIsGivenIfNoneIsAllowed() {
        BoostLimit none = new BoostLimit(0, 0);
        assertEquals(0, none.given(7), 1e-12);
        assertEquals(0, none.given(-7), 1e-12);
    }

    @Test
    void theMachineIsTurnedOverAndTheTargetLaidOnTop() {
        Curve target = new Curve(new double[] {1200, 2000}, new double[] {0, 1});
        MeasuredCurve machine = measured(hz -> hz > 1500 ? -4 : 0, 0.02);
        Curve gain = WantedGain.of(machine, target, LIMIT);
        assertEquals(5, gain.at(8000), 1e-6);
        assertEquals(0, gain.at(1000), 1e-9);
        assertEquals(0, gain.at(100), 1e-6);
    }

    @Test
    void aHoleIsNotFilledAndTheEndsFade() {
        MeasuredCurve machine =
                measured(hz -> hz < 200 || Math.abs(hz / 6000 - 1) < 0.05 ? -20 : 0, 0.02);
        Curve gain = WantedGain.of(machine, TargetCurve.flat(), LIMIT);
        assertEquals(6, gain.at(6000), 0.1);
        assertEquals(6, gain.at(100), 0.1);
        assertEquals(0, gain.at(15), 1e-9);
        assertEquals(0, gain.at(20_000 * Math.sqrt(2)), 1e-9);
        assertTrue(gain.at(21) < 4);
    }

    @Test
    void whatIsNotKnownIsNotCorrected() {
        Curve target = TargetCurve.flat();
        assertEquals(
                5, WantedGain.of(measured(WantedGainTest::fall, 0.9), target, LIMIT).at(9000), 0.3);
        assertEquals(
                2.5, WantedGain.of(measured(WantedGainTest::fall, 2), target, LIMIT).at(9000), 0.3);
        assertEquals(
                0, WantedGain.of(measured(WantedGainTest::fall, 3), target, LIMIT).at(9000), 0.01);
    }

    private static double fall(double hz) {
        return hz > 3000 ? -5 : 0;
    }

    /**
     * A slope is no noise: the parabola follows it, while a single point that is off counts less.
     */
    @Test
    void noiseIsSmoothedAndSlopesAreKept() {
        MeasuredCurve slope = measured(hz -> -3 * Math.log(hz / 1000) / Math.log(2), 0.4);
        assertEquals(-6, slope.smoothed().at(4000), 0.01);
        double spike = slope.hz()[150];
        MeasuredCurve spiky = measured(hz -> hz == spike ? 1 : 0, 0.4);
        assertTrue(Math.abs(spiky.smoothed().at(spike)) < 0.3);
        MeasuredCurve sure = measured(hz -> hz == spike ? 1 : 0, 0.05);
        assertEquals(1, sure.smoothed().at(spike), 1e-9);
    }

    @Test
    void theMeanOfTwoLiesBetweenThem() {
        MeasuredCurve mean = MeasuredCurve.mean(measured(hz -> -2, 0.3), measured(hz -> -6, 0.4));
        assertEquals(-4, mean.curve().at(5000), 1e-9);
        assertEquals(0.25, mean.uncertaintyDb()[40], 1e-9);
    }
}
