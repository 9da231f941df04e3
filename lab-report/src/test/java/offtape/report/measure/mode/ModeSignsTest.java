package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.measure.speed.ToneReading;
import offtape.report.result.Distortion;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a return of one minute, whose place is known within 2 ms, shows of how it was made. */
class ModeSignsTest {

    private static final double HEADS_S = 0.158;

    private static final HeardDeviation COMB = comb(20, (int) (500 * HEADS_S));

    private static final HeardDeviation ONE_HEAD = comb(20, 0);

    /**
     * Random motion of the tape less what it was when it was written, 500 values a second.
     *
     * @param late so many values before, or 0 for one head alone
     */
    static HeardDeviation comb(int seconds, int late) {
        Random random = new Random(5);
        double[] motion = new double[500 * seconds + 1000];
        for (int i = 0; i < motion.length; i++) {
            motion[i] = 0.05 * random.nextGaussian();
        }
        double[] heard = new double[500 * seconds];
        for (int i = 0; i < heard.length; i++) {
            heard[i] = motion[i + 1000] - (late == 0 ? 0 : motion[i + 1000 - late]);
        }
        return new HeardDeviation(heard, 500, 225, f -> 1e-12 * f * f, List.of());
    }

    private static ModeSigns signs(ProgrammeReturn ret, ToneReading tone, Distortion... ladders) {
        return ModeSigns.of(ret, tone, List.of(ladders));
    }

    private static ToneReading wavering(HeardDeviation heard) {
        return MarkedReturn.tone(0, 0.05, 0.001, heard);
    }

    /**
     * A return of 60 s · (1 + s) runs 1/(1 + s) − 1 off: −5 % s and the square of it. Both ends are
     * known within 2 ms, √2 · 2 ms over a minute are 47.14 ppm; wow of 0.1 % rms at 0.5 Hz moves a
     * moment by 0.1 % / π = 0.318 ms rms, both ends by √2 as much, 0.4502 ms, k = 2: 15.01 ppm.
     */
    @Test
    void theRateIsThatOfBothEnds() {
        ModeSigns quiet = signs(MarkedReturn.of(0.16, 5000), MarkedReturn.tone(0, 0, 0.0, null));
        assertEquals(1e6 * (1 / 1.005 - 1), quiet.rateError().value(), 1e-6);
        assertEquals("ppm", quiet.rateError().unit());
        assertEquals(47.1405, quiet.rateError().uncertainty(), 1e-3);
        assertEquals(0.16, quiet.delaySeconds(), 1e-12);
        ModeSigns wow = signs(MarkedReturn.of(0.16, 0), MarkedReturn.tone(0.1, 0, 0.0, null));
        assertEquals(Math.hypot(47.1405, 15.0053), wow.rateError().uncertainty(), 1e-3);
        ModeSigns silent =
                signs(MarkedReturn.of(0.16, 0), new ToneReading(Speed.unknown("Not heard."), null));
        assertEquals(47.1405, silent.rateError().uncertainty(), 1e-3);
        assertFalse(silent.steady());
    }

    /** 0.001 % and three times the floor. */
    @ParameterizedTest
    @CsvSource({"0.0039, 0.001, true", "0.0041, 0.001, false", "0.0009, , true", "0.0011, , false"})
    void convertersWaverLessThanTape(double weightedRms, Double floor, boolean steady) {
        ToneReading tone = MarkedReturn.tone(0, weightedRms, floor, null);
        assertEquals(steady, signs(MarkedReturn.of(0.16, 0), tone).steady());
    }

    @Test
    void oneLadderThatReachesThreePercentSaturates() {
        Quantity no = Quantity.unknown("Not reached.");
        Quantity level = Quantity.known(8, "dB", 0.1);
        Distortion clean =
                new Distortion("left", 1000, List.of(), no, no, no, no, no, no, no, null, null);
        Distortion bent =
                new Distortion("left", 1000, List.of(), no, level, no, no, no, no, no, null, null);
        ProgrammeReturn ret = MarkedReturn.of(0.16, 0);
        assertFalse(signs(ret, wavering(null)).saturates());
        assertFalse(signs(ret, wavering(null), clean).saturates());
        assertTrue(signs(ret, wavering(null), clean, bent).saturates());
    }

    /**
     * The comb of heads 158 ms apart shows where the programme begins 158 to 218 ms late, a
     * millisecond before that if it was put in place exactly.
     */
    @ParameterizedTest
    @CsvSource({
        "0.17, true",
        "0.1575, true",
        "0.1565, false",
        "0.2175, true",
        "0.2185, false",
        "1.4, false"
    })
    void theCombFitsTheDelay(double lateSeconds, boolean told) {
        ProgrammeReturn ret = MarkedReturn.of(lateSeconds, 0);
        assertEquals(told, signs(ret, wavering(COMB)).twoHeads());
    }

    @Test
    void whereHeadsCannotBeNoCombIsSought() {
        assertFalse(signs(MarkedReturn.of(0.17, 0), wavering(ONE_HEAD)).twoHeads());
        assertFalse(signs(MarkedReturn.of(0.17, 0), wavering(null)).twoHeads());
        assertFalse(signs(MarkedReturn.of(0.17, 5000), wavering(COMB)).twoHeads());
        ToneReading steady = MarkedReturn.tone(0, 0.003, 0.001, COMB);
        assertFalse(signs(MarkedReturn.of(0.17, 0), steady).twoHeads());
        ModeSigns found = signs(MarkedReturn.of(0.17, 0), wavering(COMB), saturated());
        assertTrue(found.twoHeads() && found.saturates() && !found.steady());
        assertEquals(0.17, found.delaySeconds(), 1e-12);
        assertEquals(0, found.rateError().value(), 1e-6);
    }

    private static Distortion saturated() {
        Quantity level = Quantity.known(8, "dB", 0.1);
        return new Distortion(
                "right", 1000, List.of(), level, level, level, level, level, level, level, null,
                null);
    }

    private static ModeSigns of(double ppm, double uncertaintyPpm, double delaySeconds) {
        return new ModeSigns(
                Quantity.known(ppm, "ppm", uncertaintyPpm), delaySeconds, false, false, false);
    }

    /** Two clocks differ by less than 200 ppm, two passes of one machine by less than 0.3 %. */
    @ParameterizedTest
    @CsvSource({
        "199, 0, true, true",
        "-199, 0, true, true",
        "201, 0, false, true",
        "-201, 0, false, true",
        "299, 100, true, true",
        "301, 100, false, true",
        "50, 900, true, true",
        "200, 0, false, true",
        "2999, 0, false, true",
        "3001, 0, false, false",
        "-3001, 0, false, false",
        "-3099, 100, false, true",
        "3000, 0, false, false",
    })
    void theRateTellsWhatItCanBe(double ppm, double doubt, boolean clocks, boolean machine) {
        assertEquals(clocks, of(ppm, doubt, 0.1).isRateOfClocks());
        assertEquals(machine, of(ppm, doubt, 0.1).isRateOfOneMachine());
    }

    /** An interface answers within a quarter of a second, heads after 5 ms to 1.5 s. */
    @ParameterizedTest
    @CsvSource({
        "-0.0011, false, false",
        "-0.0009, true, false",
        "0.0049, true, false",
        "0.0051, true, true",
        "0.249, true, true",
        "0.251, false, true",
        "1.49, false, true",
        "1.51, false, false",
        "-0.001, false, false",
        "0.005, true, false",
        "0.25, false, true",
        "1.5, false, false",
    })
    void theDelayTellsWhatItCanBe(double seconds, boolean loop, boolean heads) {
        assertEquals(loop, of(0, 0, seconds).isDelayOfLoop());
        assertEquals(heads, of(0, 0, seconds).isDelayOfHeads());
    }

    @Test
    void rateAndDelayAreSaidInPercentAndMilliseconds() {
        assertEquals("+0.012 %", of(123, 10, 0.1).rateText());
        assertEquals("-1.000 %", of(-10_000, 10, 0.1).rateText());
        assertEquals("158 ms", of(0, 0, 0.1576).delayText());
    }
}
