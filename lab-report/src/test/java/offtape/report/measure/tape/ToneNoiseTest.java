package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** White noise beside a tone: of variance σ² it has σ²/RATE for each hertz about the carrier. */
class ToneNoiseTest {

    private static final double DENSITY = 0.004 * 0.004 / Sounding.RATE;

    private static ToneNoise of(MemoryAudio sound) {
        return ToneNoise.of(sound, 0.2, 8.2, Sounding.HZ);
    }

    /**
     * On the mean of many tapes the noise is what it is, however long the pieces are of which its
     * lines are made: 8 s of 400 Hz give two, 8 s of 3 kHz, whose band is wider, seven. The right
     * channel has twice the noise.
     */
    @ParameterizedTest
    @CsvSource({"400, 2000, 24, 6", "3000, 12000, 140, 2"})
    void whiteNoiseIsReadOnEachChannel(double hz, int rate, double passHz, int tapes) {
        double left = 0;
        double right = 0;
        for (int seed = 0; seed < tapes; seed++) {
            Random random = new Random(seed);
            double[][] x = new double[2][(int) (8.4 * rate)];
            for (int i = 0; i < x[0].length; i++) {
                double sine = Math.sin(2 * Math.PI * hz * i / rate);
                x[0][i] = 0.2 * sine + 0.004 * random.nextGaussian();
                x[1][i] = 0.1 * sine + 0.008 * random.nextGaussian();
            }
            ToneNoise noise = ToneNoise.of(new MemoryAudio("tape", rate, x), 0.2, 8.2, hz);
            assertEquals(passHz, noise.passHz(), 1e-9);
            left += noise.density()[0] / tapes;
            right += noise.density()[1] / tapes;
        }
        double density = 0.004 * 0.004 / rate;
        assertEquals(density, left, 0.1 * density);
        assertEquals(4 * density, right, 0.1 * 4 * density);
    }

    /**
     * The band that is read lets through more than the tone's, and less once cells are averaged.
     */
    @Test
    void noiseAddsToTheToneWhatTheBandLetsThrough() {
        ToneNoise noise = of(new Sounding(8.4).noise(0.004, 0.008).pair());
        // 400 Hz: up to 24 Hz passes whole, nothing from 48 Hz on, to either side
        assertTrue(noise.bandHz() > 48 && noise.bandHz() < 96, noise.bandHz() + " Hz");
        assertEquals(noise.density()[1] * noise.bandHz(), noise.power(1), 1e-18);
        assertEquals(noise.density()[0] * noise.bandHz(), noise.power(0, 1e-3), 1e-18);
        assertEquals(noise.density()[0] / 0.05, noise.power(0, 0.05), 1e-18);
    }

    /** A channel that holds no tone, and flutter, which moves the phase only. */
    @Test
    void neitherAMissingToneNorFlutterIsNoise() {
        ToneNoise noise =
                of(
                        new Sounding(8.4)
                                .right(0, t -> 0)
                                .turning(
                                        t ->
                                                Sounding.HZ * t
                                                        - 0.05 * Math.cos(2 * Math.PI * 12 * t))
                                .noise(0.004, 0.004)
                                .pair());
        assertEquals(DENSITY, noise.density()[0], 0.3 * DENSITY);
        assertEquals(DENSITY, noise.density()[1], 0.3 * DENSITY);
    }

    /** A slow swing of level, and a hum of 15 Hz beside the tone, leave the median alone. */
    @ParameterizedTest
    @CsvSource({"1, 0.3", "15, 0.2"})
    void whatIsNoNoiseDoesNotCount(double hz, double db) {
        MemoryAudio plain = new Sounding(8.4).noise(0.004, 0.004).pair();
        MemoryAudio swinging =
                new Sounding(8.4)
                        .level(t -> db * Math.sin(2 * Math.PI * hz * t))
                        .noise(0.004, 0.004)
                        .pair();
        double noise = of(plain).density()[0];
        assertEquals(noise, of(swinging).density()[0], 0.05 * noise);
    }

    /** Dropouts of 20 dB would be a thousand times the noise. */
    @Test
    void dropoutsAreBridged() {
        ToneNoise noise =
                of(new Sounding(8.4).level(t -> t % 3 > 2.9 ? -20 : 0).noise(0.004, 0.004).pair());
        assertEquals(DENSITY, noise.density()[0], 0.4 * DENSITY);
    }

    /** Of too few values nothing is told. */
    @Test
    void aMomentTellsNoNoise() {
        MemoryAudio sound = new Sounding(1).noise(0.004, 0.004).pair();
        assertEquals(0, ToneNoise.of(sound, 0.5, 0.55, Sounding.HZ).density()[0], 0);
    }
}
