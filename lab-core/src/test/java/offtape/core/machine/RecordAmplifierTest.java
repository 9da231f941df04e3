package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.core.fault.UnusableInputException;
import offtape.core.machine.Bench.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A record amplifier that distorts, on one channel or both. */
class RecordAmplifierTest {

    private static final int RATE_HZ = 48_000;

    /**
     * c·x² gives c·A²/2 of the second harmonic and leaves the fundamental alone: 1.5 % at reference
     * and 1.5 %·10^(L/20) at L dB. The other channel is clean, and as long and as loud.
     */
    @ParameterizedTest
    @CsvSource({"0, 1.5", "-20, 0.15", "6, 2.99289"})
    void secondHarmonicIsThatOfOneChannel(double levelDb, double percent) {
        String members = "'electronics':{'left':{'secondHarmonicPercent':1.5}}";
        double[][] out = play(members, 1000, levelDb);
        assertEquals(percent / 100, ratio(out[0], 2), 2e-6);
        assertEquals(0, ratio(out[1], 2), 1e-8);
        assertEquals(levelDb, line(out[0], 1000).levelDb(), 1e-4);
        assertEquals(levelDb, line(out[1], 1000).levelDb(), 1e-4);
        // The constant part is held back by a first-order high-pass at 1 Hz, which turns 1 kHz by
        // 1/1000.
        double lead = line(out[0], 1000).phase() - line(out[1], 1000).phase();
        assertEquals(1e-3, lead, 2e-6);
        SteadyTone tone = Bench.run(Bench.machine(members), RATE_HZ, 1).tone(0);
        assertEquals(percent, tone.harmonicPercent(2, 1000, levelDb), 2e-4);
    }

    /**
     * tanh(D·sin θ) = Σ: fundamental D·(1 − D²/4 + D⁴/12 − …), third D³/12·(1 − D²/2 + …). With K3
     * = 0.1 % at reference D² is 0.012·(1 + D²/4) = 0.012036, and at −20 dB K3 is D²/1200·(1 −
     * D²/400) = 0.001003 %. Behind 6 dB of record gain, a tone of −6 dB is at reference.
     */
    @Test
    void thirdHarmonicIsAsStatedBehindTheGain() {
        String third = "'thirdHarmonicPercent':0.1";
        assertEquals(1e-3, ratio(play("'electronics':{" + third + "}", 1000, 0)[1], 3), 1e-7);
        assertEquals(1.003e-5, ratio(play("'electronics':{" + third + "}", 1000, -20)[1], 3), 5e-8);
        String driven = "'electronics':{'recordGainDb':6," + third + "}";
        assertEquals(1e-3, ratio(play(driven, 1000, -6)[0], 3), 1e-7);
    }

    /**
     * Small third harmonics of amplifier and tape add, as both flatten. The amplifier's, 0.1 % = k,
     * comes through the cubic with its slope for a small signal beside the tone, 1 − 3aA²/2, re 1 −
     * 3aA²/4 for the tone; the tape's own, aA²/4/(1 − 3aA²/4), is that of a tone that the amplifier
     * lowered by 3k, and so by 6k lower.
     */
    @Test
    void harmonicsOfAmplifierAndTapeAddUp() {
        String members =
                "'electronics':{'thirdHarmonicPercent':0.1},"
                        + "'saturation':{'kind':'cubic','levelAtK3ThreePercentDb':20}";
        double aa = 0.12 / 1.09 / 100;
        double cubic = aa / 4 / (1 - 3 * aa / 4);
        double expected = 1e-3 * (1 - 0.75 * aa) + cubic * (1 - 6e-3);
        assertEquals(expected, ratio(play(members, 1000, 0)[0], 3), 3e-8);
    }

    /** All together, driven hard: the truth of the chain is what returns. */
    @Test
    void truthOfTheChainIsWhatReturns() {
        String members =
                "'saturation':{'levelAtK3ThreePercentDb':5,'emphasisMicroseconds':35,"
                        + "'secondHarmonicPercent':0.3},'electronics':{'secondHarmonicPercent':2,"
                        + "'right':{'thirdHarmonicPercent':1,'upperEdgeHz':9000}}";
        double[][] out = play(members, 1000, 6);
        MachineRun run = Bench.run(Bench.machine(members), RATE_HZ, 2.5);
        for (int c = 0; c < 2; c++) {
            for (int n = 1; n <= 6; n++) {
                double expected = run.tone(c).peak(n, 1000, 6);
                assertEquals(expected, line(out[c], 1000.0 * n).peak(), 2e-7, "harmonic " + n);
            }
        }
        MachineTruth truth = run.truth();
        assertEquals(
                run.tone(1).harmonicPercent(3, 1000, 6),
                truth.distortion().get(4).steps().get(26).k3Percent(),
                0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'secondHarmonicPercent':11", "'left':{'thirdHarmonicPercent':-1}"})
    void whatCannotBeIsRefused(String member) {
        assertThrows(
                UnusableInputException.class,
                () -> Bench.machine("'electronics':{" + member + "}"));
    }

    private static double ratio(double[] x, int harmonic) {
        return line(x, 1000.0 * harmonic).peak() / line(x, 1000).peak();
    }

    private static double[][] play(String members, double frequencyHz, double levelDb) {
        return Bench.play(Bench.machine(members), RATE_HZ, 1.2, Bench.sine(frequencyHz, levelDb));
    }

    private static Line line(double[] x, double frequencyHz) {
        return Bench.line(x, RATE_HZ, 0.3, 0.9, frequencyHz);
    }
}
