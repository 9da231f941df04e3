package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.cli.sound.LevelCeiling;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is sent begins quietly, never clicks and never exceeds the ceiling. */
class GeneratorTest {

    private static final int RATE = 48_000;
    private static final double PEAK = 0.1;

    private Generator generator;

    @BeforeEach
    void begin() {
        generator = new Generator(RATE, LevelCeiling.FULL_SCALE);
    }

    private double[][] next(double seconds) {
        double[][] block = new double[2][(int) (seconds * RATE)];
        generator.fill(block, block[0].length);
        return block;
    }

    private static double peak(double[] x) {
        return Arrays.stream(x).map(Math::abs).max().orElseThrow();
    }

    /** Largest step from one sample to the next. */
    private static double steepest(double[] x) {
        double most = 0;
        for (int i = 1; i < x.length; i++) {
            most = Math.max(most, Math.abs(x[i] - x[i - 1]));
        }
        return most;
    }

    /** A sine's own slope, and half a cosine over 20 ms or more on top of it. */
    private static double allowed(double hz, double peak) {
        return peak * (2 * Math.PI * hz + Math.PI / 2 / 0.02) / RATE;
    }

    private void rise() {
        generator.send(Sent.tone(1, 1000, PEAK, PEAK));
        next(Generator.RISE_S + 0.1);
    }

    @Test
    void theFirstToneRisesFromFortyDecibelsBelow() {
        generator.send(Sent.tone(1, 1000, PEAK, PEAK));
        double[][] start = next(0.1);
        assertTrue(peak(start[0]) < PEAK * Math.pow(10, -38 / 20.0));
        assertTrue(steepest(start[0]) <= allowed(1000, PEAK / 50));
        // half way in time is half way in decibels
        next(Generator.RISE_S / 2 - 0.2);
        assertEquals(-20, 20 * Math.log10(peak(next(0.1)[0]) / PEAK), 0.1);
        assertEquals(-1, generator.settledAt(Sent.tone(1, 1000, PEAK, PEAK)));
        next(Generator.RISE_S / 2 + 0.1);
        assertEquals(PEAK, peak(next(0.1)[0]), 1e-6);
        assertTrue(generator.settledAt(Sent.tone(1, 1000, PEAK, PEAK)) >= Generator.RISE_S * RATE);
    }

    @Test
    void changesOfLevelAndChannelsFade() {
        rise();
        generator.send(Sent.tone(2, 1000, 2 * PEAK, PEAK));
        assertTrue(steepest(next(0.2)[0]) <= allowed(1000, 2 * PEAK));
        generator.send(Sent.tone(3, 1000, 2 * PEAK, 0));
        double[][] off = next(0.2);
        assertTrue(steepest(off[1]) <= allowed(1000, PEAK));
        assertEquals(0, off[1][off[1].length - 1]);
        // the tone goes on where it was: its phase tells no seam
        assertTrue(steepest(off[0]) <= allowed(1000, 2 * PEAK));
        assertEquals(2 * PEAK, peak(off[0]), 1e-6);
    }

    @Test
    void anotherFrequencyComesAfterAFade() {
        rise();
        generator.send(Sent.tone(2, 3150, PEAK, PEAK));
        double[][] change = next(0.2);
        assertTrue(steepest(change[0]) <= allowed(3150, PEAK));
        generator.send(Sent.nothing(3));
        double[][] end = next(0.2);
        assertTrue(steepest(end[0]) <= allowed(3150, PEAK));
        assertEquals(0, peak(next(0.1)[0]));
    }

    @Test
    void nothingExceedsTheCeiling() {
        generator = new Generator(RATE, new LevelCeiling(-20));
        generator.send(Sent.tone(1, 1000, 0.9, 0.9));
        next(Generator.RISE_S);
        assertEquals(0.1, peak(next(0.1)[0]), 1e-6);
        generator.send(Sent.once(2, Mark.samples(RATE), 0.9));
        assertTrue(peak(next(1)[1]) <= 0.1);
        generator.send(Sent.loop(3, ManyTones.table(RATE), 0.9, 0.9));
        assertTrue(peak(next(1)[1]) <= 0.1 + 1e-12);
    }

    @Test
    void theMarkSoundsOnceAndItsPlaceIsTold() {
        double[] mark = Mark.samples(RATE);
        next(0.5);
        Sent once = Sent.once(1, mark, PEAK);
        generator.send(once);
        double[][] sound = next(1);
        assertTrue(generator.settledAt(once) >= 0);
        int at = (int) (generator.beganAt() - RATE / 2);
        for (int i = 0; i < mark.length; i++) {
            assertEquals(PEAK * mark[i], sound[0][at + i], 1e-12);
        }
        assertEquals(0, peak(Arrays.copyOfRange(sound[0], at + mark.length, RATE)));
    }

    @Test
    void oneOutputGetsWhateverIsSent() {
        rise();
        generator.send(Sent.tone(2, 1000, 0, PEAK));
        next(0.1);
        double[][] block = new double[1][4800];
        generator.fill(block, 4800);
        assertEquals(PEAK, peak(block[0]), 1e-6);
    }
}
