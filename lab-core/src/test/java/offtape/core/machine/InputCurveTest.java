package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.machine.spec.MachineSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the input of the interface adds to a sine. */
class InputCurveTest {

    private static final int RATE_HZ = 48_000;

    private static final MachineSpec LOOP =
            Bench.machine(
                    "'mode':'loopback','recorder':{'secondHarmonicPercent':0.02,"
                            + "'thirdHarmonicPercent':0.01}");

    /**
     * The second harmonic rises by 1 dB a dB and the third by 2: at L dB they are 0.02·10^(L/20)
     * and 0.01·10^(L/10) percent of the tone sent. The fundamental gains 3 times the third: 0.03 %
     * at reference, 0.0026 dB.
     */
    @ParameterizedTest
    @CsvSource({"0", "6", "12"})
    void harmonicsRiseByTheirPower(double levelDb) {
        double[] left = Bench.play(LOOP, RATE_HZ, 0.5, Bench.sine(1000, levelDb))[0];
        double sent = Bench.REFERENCE_PEAK * Math.pow(10, levelDb / 20);
        double third = 1e-4 * Math.pow(10, levelDb / 10);
        assertEquals(2e-4 * Math.pow(10, levelDb / 20), peak(left, 2000) / sent, 1e-7);
        assertEquals(third, peak(left, 3000) / sent, 1e-7);
        assertEquals(1 + 3 * third, peak(left, 1000) / sent, 1e-6);
    }

    @Test
    void theTruthOfALoopbackIsThatOfTheInput() {
        SteadyTone tone = Bench.run(LOOP, RATE_HZ, 0.5).tone(0);
        assertEquals(0.02 / 1.0003, tone.harmonicPercent(2, 1000, 0), 1e-6);
        assertEquals(0.01 / 1.0003, tone.harmonicPercent(3, 1000, 0), 1e-6);
        assertEquals(0, tone.harmonicPercent(3, 10_000, 0), 0);
    }

    /** What the interface adds is not the machine's. */
    @Test
    void theTruthOfAMachineDoesNotHoldIt() {
        MachineSpec machine =
                Bench.machine("'recorder':{'secondHarmonicPercent':1,'thirdHarmonicPercent':1}");
        SteadyTone tone = Bench.run(machine, RATE_HZ, 0.5).tone(0);
        assertEquals(0, tone.harmonicPercent(2, 1000, 0), 0);
        assertEquals(0, tone.harmonicPercent(3, 1000, 0), 0);
    }

    private static double peak(double[] x, double hz) {
        return Bench.line(x, RATE_HZ, 0.1, 0.4, hz).peak();
    }
}
