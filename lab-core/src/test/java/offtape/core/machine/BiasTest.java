package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.core.fault.UnusableInputException;
import offtape.core.machine.Bench.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bias that is not as it was set: 1 dB too much on the left, 3 dB too little on the right. */
class BiasTest {

    private static final int RATE_HZ = 48_000;
    private static final String BIAS = "'bias':{'overDb':1,'rightDb':-3}";

    /**
     * At 190.5 mm/s 10 kHz is 19.05 µm long: 1 dB is lost on the left, and 1 kHz, which the machine
     * is lined up for, 0.1 dB. On the right 6·tanh(3/6) = 2.7727 dB are won at 10 kHz and
     * 6·tanh(0.3/6) = 0.2998 dB at 1 kHz. A small tone of 1 kHz loses 1/32 and 9/16 dB.
     */
    @ParameterizedTest
    @CsvSource({"0, -0.9, -0.03125", "1, 2.4729, -0.5625"})
    void shortWavesAndSensitivity(int channel, double at10kHz, double at1kHz) {
        SteadyTone tone = Bench.run(Bench.machine(BIAS), RATE_HZ, 1).tone(channel);
        // The filter smooths what the tape does at once: a thousandth of a decibel.
        assertEquals(at10kHz, 20 * Math.log10(tone.gain(10_000) / tone.gain(1000)), 2e-3);
        assertEquals(at1kHz, 20 * Math.log10(tone.gain(1000)), 1e-9);
    }

    /** Half the speed, half the wavelength: 5 kHz at 95.25 mm/s lose what 10 kHz do at 190.5. */
    @Test
    void itIsTheWavelengthThatCounts() {
        String slow = "'tapeSpeedMmPerS':95.25,'bias':{'overDb':3}";
        SteadyTone tone = Bench.run(Bench.machine(slow), RATE_HZ, 1).tone(0);
        assertEquals(-3 * 0.8, 20 * Math.log10(tone.gain(5000) / tone.gain(1000)), 2e-3);
    }

    @Test
    void theTruthIsWhatReturns() {
        for (double hertz : new double[] {1000, 10_000}) {
            double[][] out = Bench.play(Bench.machine(BIAS), RATE_HZ, 1.2, Bench.sine(hertz, -20));
            MachineRun run = Bench.run(Bench.machine(BIAS), RATE_HZ, 1.2);
            Line left = Bench.line(out[0], RATE_HZ, 0.3, 0.9, hertz);
            assertEquals(run.tone(0).peak(1, hertz, -20), left.peak(), 1e-7);
        }
    }

    /** 3 % at +6 dB becomes 3 % at +6.3 dB on the left and at +3 dB on the right. */
    @ParameterizedTest
    @CsvSource({"0, 6.3", "1, 3"})
    void theThirdHarmonicComesEarlierWithTooLittle(int channel, double levelDb) {
        String members = BIAS + ",'saturation':{'kind':'cubic','levelAtK3ThreePercentDb':6}";
        double peak = Bench.REFERENCE_PEAK * Math.pow(10, levelDb / 20);
        RecordingCurve curve =
                RecordingCurve.of(Bench.machine(members), channel, Bench.REFERENCE_PEAK);
        assertEquals(0.03, curve.harmonics(peak).ratio(3), 1e-12);
    }

    /** Beyond 3 dB too much nothing more is won. */
    @Test
    void linearityEnds() {
        assertEquals(0.9, new Bias(6).thirdHarmonicShiftDb(), 1e-12);
    }

    /**
     * 3 dB too little: the tape's −50 dB rise to −41; of its own come 9·10^−6.2, −52.458 dB;
     * together −40.70. Of 5 to 2000 Hz 990/1995 lie in the band of the truth. The left has the
     * tape's own.
     */
    @Test
    void modulationNoiseRises() {
        MachineTruth truth = truth(BIAS + ",'modulationNoise':{'levelDb':-50}");
        double share = 10 * Math.log10(990 / 1995.0);
        double sum = 10 * Math.log10(Math.pow(10, -4.1) + 9 * Math.pow(10, -6.2));
        assertEquals(-50 + share, truth.noise().get(0).modulationNoise(), 1e-9);
        assertEquals(sum + share, truth.noise().get(1).modulationNoise(), 1e-9);
        MachineTruth own = truth(BIAS);
        assertNull(own.noise().get(0).modulationNoise());
        double alone = -62 + 20 * Math.log10(3) + share;
        assertEquals(alone, own.noise().get(1).modulationNoise(), 1e-9);
    }

    /** A tape without noise of its own: mean square of A·(1 + m)·sin is A²/2·(1 + m²). */
    @Test
    void tonesFluctuateWithTooLittle() {
        double seconds = 262_144.0 / RATE_HZ;
        double[][] out =
                Bench.play(
                        Bench.machine("'bias':{'overDb':-4}"),
                        RATE_HZ,
                        1 + seconds,
                        Bench.sine(6000, 0));
        double peak =
                Bench.run(Bench.machine("'bias':{'overDb':-4}"), RATE_HZ, 1).tone(0).gain(6000);
        double sum = 0;
        int points = 262_144;
        for (int i = 0; i < points; i++) {
            double v = out[0][RATE_HZ / 2 + i] / Bench.REFERENCE_PEAK / peak;
            sum += 2 * v * v / points;
        }
        assertEquals(16 * Math.pow(10, -6.2), sum - 1, 2e-6);
    }

    /** −58 dB of hiss rise by 1.5 dB, and the reference that they are told of falls by 9/16. */
    @Test
    void hissRises() {
        MachineTruth truth = truth(BIAS + ",'hiss':{'levelDb':-58}");
        assertEquals(-58 + 1 / 32.0, truth.noise().get(0).unweighted(), 1e-6);
        assertEquals(-56.5 + 9 / 16.0, truth.noise().get(1).unweighted(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'overDb':-5", "'overDb':7", "'leftDb':-4.1", "'rightDb':6.1"})
    void whatCannotBeIsRefused(String member) {
        assertThrows(UnusableInputException.class, () -> Bench.machine("'bias':{" + member + "}"));
    }

    private static MachineTruth truth(String members) {
        return Bench.run(Bench.machine(members), RATE_HZ, 1).truth();
    }
}
