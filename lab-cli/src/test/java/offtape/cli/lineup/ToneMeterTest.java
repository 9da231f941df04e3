package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels and third harmonics of made-up tones whose values are known by hand. */
class ToneMeterTest {

    private static final int RATE = 48_000;

    private static double[] made(ToneMeter meter, DoubleUnaryOperator ofTime) {
        double[] x = new double[(int) Math.ceil(meter.seconds() * RATE)];
        for (int i = 0; i < x.length; i++) {
            x[i] = ofTime.applyAsDouble((double) i / RATE);
        }
        return x;
    }

    private static double sine(double hz, double t) {
        return Math.sin(2 * Math.PI * hz * t + 0.3);
    }

    private static ToneReading read(ToneMeter meter, double[] sound) {
        return meter.read(new double[][] {sound}).get(0);
    }

    /** A sine of peak A has the level 20·lg A; here with hum and a constant part beside it. */
    @ParameterizedTest
    @ValueSource(doubles = {1000, 3150, 10_000, 315, 100, 40})
    void theLevelIsThatOfTheTone(double hz) {
        ToneMeter meter = new ToneMeter(hz, RATE);
        double hum = hz > 300 ? 0.001 : 0;
        double[] left = made(meter, t -> 0.1 * sine(hz, t) + hum * sine(50, t) + 0.001);
        double[] right = made(meter, t -> 0.1 * Math.pow(10, -1.3 / 20) * sine(hz, t + 1e-4));
        List<ToneReading> readings = meter.read(new double[][] {left, right});
        assertEquals(-20, readings.get(0).levelDbfs(), 0.005);
        assertEquals(-1.3, readings.get(1).levelDbfs() - readings.get(0).levelDbfs(), 0.005);
        assertTrue(readings.get(0).isTone());
    }

    /**
     * sin³ = ¾ sin − ¼ sin 3φ, so y = x − a·x³ of a sine of peak A has the fundamental A − ¾aA³ and
     * the third harmonic ¼aA³.
     */
    @ParameterizedTest
    @CsvSource({"1000,0.5", "1000,5", "3150,1", "315,3"})
    void theThirdHarmonicOfACubicIsReadAsByHand(double hz, double percent) {
        double a = 0.4;
        double k = percent / 100;
        double aPeak2 = 4 * k / (1 + 3 * k);
        double peak = Math.sqrt(aPeak2 / a);
        ToneMeter meter = new ToneMeter(hz, RATE);
        double[] sound =
                made(
                        meter,
                        t -> {
                            double x = peak * sine(hz, t);
                            return x - a * x * x * x;
                        });
        ToneReading reading = read(meter, sound);
        assertEquals(percent, reading.k3Percent(), 0.01 * percent);
        assertNull(reading.k3BelowPercent());
        double fundamental = peak - 0.75 * a * peak * peak * peak;
        assertEquals(20 * Math.log10(fundamental), reading.levelDbfs(), 0.005);
    }

    /**
     * 0.3 % of wow and flutter at 4 and 9.5 Hz: levels and harmonics of the tape stay as they are.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1000, 3150, 10_000})
    void flutterMovesNothing(double hz) {
        ToneMeter meter = new ToneMeter(hz, RATE);
        double[] sound =
                made(
                        meter,
                        t -> {
                            double late =
                                    0.002 * Math.sin(2 * Math.PI * 4 * t) / (2 * Math.PI * 4)
                                            + 0.001
                                                    * Math.sin(2 * Math.PI * 9.5 * t)
                                                    / (2 * Math.PI * 9.5);
                            return 0.1 * sine(hz, t - late)
                                    + 0.002 * Math.sin(3 * (2 * Math.PI * hz * (t - late) + 0.3));
                        });
        ToneReading reading = read(meter, sound);
        assertEquals(-20, reading.levelDbfs(), 0.02);
        if (hz < 8000) {
            assertEquals(2, reading.k3Percent(), 0.04);
        } else {
            assertNull(reading.k3Percent());
            assertNull(reading.k3BelowPercent());
        }
    }

    /**
     * Noise of 1 % rms of the peak over 24 kHz: a harmonic of 0.01 % is far below what it leaves.
     */
    @Test
    void whatNoiseHidesIsToldAsABound() {
        Random random = new Random(3);
        ToneMeter meter = new ToneMeter(1000, RATE);
        double[] sound = made(meter, t -> 0.1 * sine(1000, t) + 0.001 * random.nextGaussian());
        ToneReading reading = read(meter, sound);
        assertNull(reading.k3Percent());
        // its rms in a band of b Hz is 1 % · √(b / 24 kHz) of the peak; 0.45 s resolve 2 Hz
        assertTrue(reading.k3BelowPercent() > 0.01, () -> "" + reading);
        assertTrue(reading.k3BelowPercent() < 0.1, () -> "" + reading);
        assertEquals(-20, reading.levelDbfs(), 0.02);
    }

    @Test
    void noiseIsNoTone() {
        Random random = new Random(4);
        ToneMeter meter = new ToneMeter(1000, RATE);
        assertFalse(read(meter, made(meter, t -> 0.1 * random.nextGaussian())).isTone());
        assertFalse(read(meter, made(meter, t -> 0)).isTone());
    }

    /** A tenth of a second without sound, as a computer that is late leaves it. */
    @Test
    void aGapIsLeftOut() {
        ToneMeter meter = new ToneMeter(1000, RATE);
        double[] sound =
                made(
                        meter,
                        t -> t > 0.2 && t < 0.3 ? 0 : 0.1 * sine(1000, t) + 0.001 * sine(3000, t));
        ToneReading reading = read(meter, sound);
        assertEquals(-20, reading.levelDbfs(), 0.02);
        assertEquals(1, reading.k3Percent(), 0.02);
    }
}
