package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Delays between made-up channels: sums of sines, so that any delay is exact. */
class PairMeterTest {

    private static final int RATE = 48_000;

    private final PairMeter meter = new PairMeter(RATE);

    private static double[] sampled(DoubleUnaryOperator ofTime) {
        double[] x = new double[RATE];
        for (int i = 0; i < x.length; i++) {
            x[i] = ofTime.applyAsDouble((double) i / RATE);
        }
        return x;
    }

    /** Sines at random over 300 Hz to 14 kHz. */
    private static DoubleUnaryOperator crowd() {
        Random random = new Random(11);
        int count = 40;
        double[] hz = random.doubles(count, 300, 14_000).toArray();
        double[] phase = random.doubles(count, 0, 2 * Math.PI).toArray();
        return t -> {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += 0.01 * Math.sin(2 * Math.PI * hz[i] * t + phase[i]);
            }
            return sum;
        };
    }

    private PairReading read(DoubleUnaryOperator left, DoubleUnaryOperator right) {
        return meter.read(new double[][] {sampled(left), sampled(right)});
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.37, -4.2, 100, -180, 320})
    void theDelayIsFoundWithoutAmbiguity(double microseconds) {
        DoubleUnaryOperator crowd = crowd();
        PairReading r = read(crowd, t -> 0.8 * crowd.applyAsDouble(t - microseconds * 1e-6));
        assertEquals(PairReading.Kind.DELAY, r.kind());
        assertEquals(microseconds, r.delayMicroseconds(), 0.1);
        assertFalse(r.inverted());
    }

    /** The many tones as they are sent, right delayed by a whole sample. */
    @Test
    void theSoundThatIsSentServes() {
        double[] table = ManyTones.table(RATE);
        double[] left = new double[RATE];
        double[] right = new double[RATE];
        for (int i = 0; i < RATE; i++) {
            left[i] = table[i % table.length];
            right[i] = table[(i + table.length - 1) % table.length];
        }
        assertEquals(
                1e6 / RATE, meter.read(new double[][] {left, right}).delayMicroseconds(), 0.02);
    }

    /** Of two equal tones φ apart the sum is cos(φ/2) of what it could be. */
    @Test
    void theMonoSumLosesTheCosineOfHalfThePhase() {
        DoubleUnaryOperator tones = t -> 0.1 * Math.sin(2 * Math.PI * 10_000 * t) + crowd0(t);
        PairReading r = read(tones, t -> tones.applyAsDouble(t - 20e-6));
        assertEquals(20 * Math.log10(Math.cos(Math.PI * 10_000 * 20e-6)), r.monoLossDb(), 0.02);
        assertEquals(20, r.delayMicroseconds(), 0.1);
    }

    private static double crowd0(double t) {
        double sum = 0;
        for (double hz = 700; hz < 9000; hz += 311) {
            sum += 0.02 * Math.sin(2 * Math.PI * hz * t + hz * hz);
        }
        return sum;
    }

    /** Wow and flutter carry both channels along. */
    @Test
    void flutterMovesNothing() {
        DoubleUnaryOperator crowd = crowd();
        DoubleUnaryOperator place = t -> t + 0.003 / (2 * Math.PI * 5) * Math.sin(10 * Math.PI * t);
        PairReading r =
                read(
                        t -> crowd.applyAsDouble(place.applyAsDouble(t)),
                        t -> crowd.applyAsDouble(place.applyAsDouble(t) - 25e-6));
        assertEquals(25, r.delayMicroseconds(), 0.2);
    }

    @Test
    void aTurnedPolarityIsTold() {
        DoubleUnaryOperator crowd = crowd();
        PairReading r = read(crowd, t -> -crowd.applyAsDouble(t - 12e-6));
        assertTrue(r.inverted());
        assertEquals(12, r.delayMicroseconds(), 0.1);
    }

    /** 130 µs at 10 kHz look like 30 µs. */
    @Test
    void aSingleToneIsToldToBeAmbiguous() {
        DoubleUnaryOperator tone = t -> 0.1 * Math.sin(2 * Math.PI * 10_000 * t);
        PairReading r = read(tone, t -> tone.applyAsDouble(t - 130e-6));
        assertEquals(PairReading.Kind.ONE_TONE, r.kind());
        assertEquals(100, r.periodMicroseconds(), 0.01);
        assertEquals(30, r.delayMicroseconds(), 0.05);
    }

    /** Hiss 20 dB below what both hear: the stated uncertainty holds. */
    @Test
    void noiseWidensTheUncertainty() {
        DoubleUnaryOperator crowd = crowd();
        double[] left = sampled(crowd);
        double[] right = sampled(t -> crowd.applyAsDouble(t - 50e-6));
        int within = 0;
        for (int seed = 0; seed < 10; seed++) {
            Random random = new Random(seed);
            PairReading r = meter.read(new double[][] {hissy(left, random), hissy(right, random)});
            within += Math.abs(r.delayMicroseconds() - 50) <= r.plusMinusMicroseconds() ? 1 : 0;
            assertTrue(r.plusMinusMicroseconds() < 1, () -> "" + r);
        }
        assertTrue(within >= 8, "only " + within);
    }

    private static double[] hissy(double[] x, Random random) {
        double[] y = x.clone();
        for (int i = 0; i < y.length; i++) {
            y[i] += 0.004 * random.nextGaussian();
        }
        return y;
    }

    @Test
    void channelsThatHaveNothingInCommonGiveNoDelay() {
        Random random = new Random(2);
        PairReading r = read(t -> random.nextGaussian(), t -> random.nextGaussian());
        assertEquals(PairReading.Kind.UNRELATED, r.kind());
        assertNull(r.monoLossDb());
        assertEquals(PairReading.Kind.UNRELATED, read(t -> 0, t -> 0).kind());
    }
}
