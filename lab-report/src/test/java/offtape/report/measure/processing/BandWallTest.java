package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Noise of two sines in each 200 Hz, whole periods in the transform and clear of each other's
 * window, so that the density of every band is exactly as wanted.
 */
class BandWallTest {

    private static final int RATE = 51_200;
    private static final int FRAMES = 2048;

    private static final double[] SINE =
            IntStream.range(0, FRAMES)
                    .mapToDouble(i -> Math.sin(2 * Math.PI * i / FRAMES))
                    .toArray();

    /** Mean square of the two sines over 200 Hz is the density. */
    private static PowerDensity density(int rate, DoubleUnaryOperator dbAtHz) {
        double[] x = new double[FRAMES];
        double binHz = (double) rate / FRAMES;
        for (int b = 0; (b + 1) * 200 <= rate / 2; b++) {
            double db = dbAtHz.applyAsDouble(b * 200.0);
            double peak = Math.sqrt(200 * Math.pow(10, db / 10));
            for (double within : new double[] {50, 150}) {
                long bin = Math.round((b * 200 + within) / binHz);
                for (int i = 0; i < FRAMES; i++) {
                    x[i] += peak * SINE[(int) ((bin * i + 331 * b) % FRAMES)];
                }
            }
        }
        return PowerDensity.of(x, rate, FRAMES);
    }

    private static Optional<HealthNote> found(int rate, DoubleUnaryOperator... channels) {
        PowerDensity[] densities =
                Arrays.stream(channels).map(c -> density(rate, c)).toArray(PowerDensity[]::new);
        return BandWall.in(new NoiseDensities(new double[channels.length][0], densities), rate);
    }

    /** −100 dB below a frequency, less by so much from there on. */
    private static DoubleUnaryOperator wall(double atHz, double fallDb) {
        return hz -> hz < atHz ? -100 : -100 - fallDb;
    }

    @ParameterizedTest
    @CsvSource({
        "16000, 30, 16.0",
        "7000, 30, 7.0",
        "11000, 14.1, 11.0",
        "11000, 13.9, ",
        "20400, 60, 20.4",
        // three bands are the wall's own, the lowest of them at 20.6 kHz at most
        "21200, 60, 21.2",
        "21400, 60, ",
        // of the six bands below 7 kHz three must lie below the wall
        "6400, 60, 6.4",
        "6200, 60, ",
    })
    void anAbruptEndIsTold(double atHz, double fallDb, String toldKhz) {
        Optional<HealthNote> note = found(RATE, wall(atHz, fallDb));
        assertEquals(toldKhz != null, note.isPresent());
        if (toldKhz != null) {
            assertEquals("warning band-ends", note.get().severity() + " " + note.get().code());
            String words = note.get().message();
            assertTrue(words.contains("ends abruptly at " + toldKhz + " kHz"), words);
        }
    }

    /** Amplifiers of first and eighth order: 10·lg(1 + (f/fc)^2n). */
    @ParameterizedTest
    @CsvSource({"1, 8000", "2, 12000", "8, 16000", "8, 19000"})
    void anAmplifierEndsGently(int order, double cornerHz) {
        DoubleUnaryOperator db =
                hz -> -100 - 10 * Math.log10(1 + Math.pow(hz / cornerHz, 2 * order));
        assertTrue(found(RATE, db).isEmpty());
    }

    /** From the third band below a place to the third above it the noise must fall by 7 dB. */
    @ParameterizedTest
    @CsvSource({"10, true", "1.1, true", "0.9, false"})
    void itMustFallWithinHalfAKilohertz(double dbABand, boolean told) {
        DoubleUnaryOperator db =
                hz -> -100 - Math.max(0, Math.min(30, dbABand * ((hz - 14_000) / 200 + 1)));
        assertEquals(told, found(RATE, db).isPresent());
    }

    /** Half of the decibels are lost where the middle one of three steps is. */
    @Test
    void itIsWhereHalfIsLost() {
        DoubleUnaryOperator db =
                hz -> hz < 14_000 ? -100 : hz < 14_200 ? -110 : hz < 14_400 ? -119 : -130;
        assertTrue(found(RATE, db).orElseThrow().message().contains(" 14.2 kHz"));
    }

    /** What is left above may hold a line, if it is 7 dB fainter than the noise below. */
    @ParameterizedTest
    @CsvSource({"-107.2, true", "-106.8, false"})
    void aWhistleAboveIsNoNoise(double whistleDb, boolean told) {
        DoubleUnaryOperator db =
                hz -> hz == 18_000 ? whistleDb : wall(15_000, 40).applyAsDouble(hz);
        assertEquals(told, found(RATE, db).isPresent());
    }

    /** The deepest fall is the wall: a step of 16 dB lies below one of 50 dB. */
    @Test
    void theDeepestFallIsTold() {
        DoubleUnaryOperator db = hz -> hz < 9000 ? -80 : hz < 15_000 ? -96 : -130;
        assertTrue(found(RATE, db).orElseThrow().message().contains(" 15.0 kHz"));
    }

    /** Every channel that has noise must end so, and the lowest end is told. */
    @Test
    void allChannelsMustShowIt() {
        DoubleUnaryOperator wall = wall(16_000, 30);
        assertTrue(found(RATE, wall, hz -> -100).isEmpty());
        assertTrue(found(RATE, hz -> -100, wall).isEmpty());
        String both = found(RATE, wall, wall(15_000, 30)).orElseThrow().message();
        assertTrue(both.contains(" 15.0 kHz"), both);
        String other = found(RATE, wall, hz -> -190).orElseThrow().message();
        assertTrue(other.contains(" 16.0 kHz"), other);
        assertTrue(found(RATE, hz -> -190).isEmpty());
    }

    /** Below −160 dB is the file's own rounding; just above 7 kHz counts what is heard below. */
    @ParameterizedTest
    @CsvSource({"-159, true", "-161, false"})
    void roundingIsNoNoise(double levelDb, boolean told) {
        assertEquals(told, found(RATE, hz -> hz < 12_000 ? levelDb : -200).isPresent());
        assertEquals(told, found(RATE, hz -> hz < 7200 ? levelDb : -200).isPresent());
    }

    /** Where the noise has ended gently before, what follows is the file's own rounding. */
    @Test
    void aWallInTheRoundingIsNone() {
        DoubleUnaryOperator db =
                hz -> hz >= 18_000 ? -220 : -140 - Math.max(0, Math.min(25, (hz - 7000) / 400));
        assertTrue(found(RATE, db).isEmpty());
    }

    /** Converters end at 0.45 of the rate: 14.4 kHz of 32 kHz, with the bands of the wall. */
    @ParameterizedTest
    @CsvSource({
        "32000, 12000, true",
        "32000, 15000, true",
        "32000, 15200, false",
        // four bands above the wall are enough, of 28 kHz those from 13.2 kHz on
        "28000, 13200, true",
        "28000, 13400, false",
    })
    void theEndOfTheRateIsNoWall(int rate, double atHz, boolean told) {
        assertEquals(told, found(rate, wall(atHz, 60)).isPresent());
    }

    @Test
    void withoutHighsNothingIsTold() {
        assertTrue(BandWall.in(null, RATE).isEmpty());
        assertTrue(found(8000, wall(3000, 60)).isEmpty());
        assertTrue(found(10_000, wall(3000, 60)).isEmpty());
        assertTrue(found(16_000, wall(7400, 60)).isEmpty());
    }
}
