package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An aged belt: slow, uneven, drifting. */
class BeltTest {

    private static final int RATE_HZ = 48_000;

    /** 0.5 − 2 % constant, and (0.1 + 0.3) % a minute: at 90 s −1.5 + 0.6 = −0.9 %. */
    @Test
    void slipAndDriftAddToTheTransports() {
        Motion motion =
                motion(
                        "'speedDeviationPercent':0.5,'driftPercentPerMinute':0.1,"
                                + "'belt':{'slipPercent':2,'driftPercentPerMinute':0.3}");
        assertEquals(-0.015, motion.deviation(0), 1e-12);
        assertEquals(-0.009, motion.deviation(90), 1e-12);
    }

    /** 4 % slow: 9.6 s of programme last 10 s and the truth has −4 %. */
    @Test
    void theTruthIsSlow() {
        MachineRun run =
                Bench.run(Bench.machine("'transport':{'belt':{'slipPercent':4}}"), RATE_HZ, 9.6);
        assertEquals(10.5 * RATE_HZ, run.frames(), 1);
        assertEquals(-4, run.truth().speed().returnMean(), 1e-9);
        assertEquals(-4, run.truth().speed().transportMean(), 1e-9);
        assertEquals(0, run.truth().speed().transportRms(), 1e-9);
    }

    /** 2^18 values at 1600 Hz are one period of the wow: its rms is exact and its band sharp. */
    @Test
    void wowHasItsRmsAndItsBand() {
        int points = 1 << 18;
        double seconds = points / 1600.0;
        Motion motion =
                Transport.motion(
                        Bench.machine("'transport':{'belt':{'wowPercent':0.5}}"),
                        Transport.Pass.READ,
                        0,
                        seconds - 0.01);
        double[] wow =
                IntStream.range(0, points).mapToDouble(i -> motion.deviation(i / 1600.0)).toArray();
        Spectrum spectrum = RealFft.ofSize(points).forward(wow);
        double inside = 0;
        double all = 0;
        for (int k = 1; k < spectrum.bins(); k++) {
            double hertz = k * 1600.0 / points;
            double power = 2 * spectrum.power(k) / points / points;
            all += power;
            inside += hertz > 0.19 && hertz < 4.01 ? power : 0;
        }
        // The last few values lie behind the table, which goes on straight there: some 1e-5.
        assertEquals(0.005, Math.sqrt(inside), 5e-6);
        assertEquals(all, inside, 1e-4 * all);
    }

    /** Random flutter stays as it is drawn when the belt's wow comes to it. */
    @Test
    void wowLeavesTheRestAlone() {
        String flutter =
                "'randomFlutter':{'rmsPercent':0.1},'scrapeFlutter':{'rmsPercent':0.02,'lowHz':1000,'highHz':3000}";
        Motion without = motion(flutter);
        Motion with = motion(flutter + ",'belt':{'wowPercent':0.3}");
        Motion alone = motion("'belt':{'wowPercent':0.3}");
        assertNotEquals(without.deviation(3), with.deviation(3));
        assertArrayEquals(
                new double[] {without.deviation(5) - without.deviation(3)},
                new double[] {
                    with.deviation(5) - with.deviation(3) - alone.deviation(5) + alone.deviation(3)
                },
                1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'slipPercent':-1", "'wowPercent':4", "'driftPercentPerMinute':3"})
    void whatCannotBeIsRefused(String member) {
        assertThrows(
                UnusableInputException.class,
                () -> Bench.machine("'transport':{'belt':{" + member + "}}"));
    }

    private static Motion motion(String members) {
        MachineSpec machine = Bench.machine("'transport':{" + members + "}");
        return Transport.motion(machine, Transport.Pass.READ, -10, 140);
    }
}
