package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A marked sound put back as it was sent. */
class MarkedReturnTest {

    private static final int RATE = 48_000;
    private static final double PEAK = 0.0625;

    private static double[] coarse(double[] x) {
        return Arrays.stream(x).map(v -> Math.rint(v * 8_388_608) / 8_388_608).toArray();
    }

    private static double[][] noise(int frames) {
        Random random = new Random(frames);
        double[][] x = new double[2][];
        for (int c = 0; c < 2; c++) {
            x[c] = coarse(random.doubles(frames, -0.9, 0.9).toArray());
        }
        return x;
    }

    /** A recording of 24 bits in which a sound lies from a frame on, times a gain a channel. */
    private static MemoryAudio recorded(MarkedSound sent, int delay, double... gains) {
        int length = (int) sent.frames();
        double[][] x = sent.read(0, length);
        double[][] y = new double[x.length][length + delay + RATE];
        for (int c = 0; c < x.length; c++) {
            for (int i = 0; i < length; i++) {
                y[c][delay + i] = gains[c] * x[c][i];
            }
            y[c] = coarse(y[c]);
        }
        return new MemoryAudio("return", RATE, y);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 100, 30_000})
    void anExactPathGivesTheSoundBackToTheBit(int frames) {
        double[][] stem = noise(frames);
        MarkedSound sent = new MarkedSound(new MemoryAudio("stem", RATE, stem), 1, PEAK);
        MemoryAudio back = recorded(sent, 31_234, 1, -1);
        Alignment found = new MarkedReturn(sent, back).find(2 * RATE);
        assertEquals(31_234 + 24_000 + 24_000, found.startFrame());
        assertEquals(1, found.step());
        assertEquals(1, found.gains().get(0));
        assertEquals(-1, found.gains().get(1));
        assertTrue(found.isExact());
        double[][] heard = new StraightenedSound(back, found, 1, frames).read(0, frames);
        assertArrayEquals(stem[0], heard[0]);
        assertArrayEquals(stem[1], heard[1]);
    }

    /** Gains of −3 dB and −4 dB and a sound that was raised by 6 dB come back level. */
    @Test
    void levelAndBalanceAreTakenBack() {
        double[][] stem = noise(20_000);
        for (double[] x : stem) {
            Arrays.setAll(x, i -> x[i] / 4);
        }
        MarkedSound sent = new MarkedSound(new MemoryAudio("stem", RATE, stem), 2, PEAK);
        MemoryAudio back = recorded(sent, 500, 0.7079, 0.631);
        Alignment found = new MarkedReturn(sent, back).find(RATE);
        double[][] heard = new StraightenedSound(back, found, 2, 20_000).read(0, 20_000);
        for (int c = 0; c < 2; c++) {
            assertArrayEquals(stem[c], heard[c], 1e-6);
        }
    }

    private static final double FAST = 1e-4;
    private static final double LATE = 12_345.37;

    /** A sum of sines up to 0.42 of the rate, by its formula, silent outside its length. */
    private static double tones(double frame, int frames) {
        double sum = 0;
        if (frame >= 0 && frame < frames) {
            // smooth, so that no corner of it lies near half the sample rate
            double edge = Math.min(1, Math.min(frame, frames - frame) / 2000);
            double swell = 0.5 - 0.5 * Math.cos(Math.PI * edge);
            for (double hz : new double[] {50, 997, 5003, 12_007, 20_011}) {
                sum += swell * 0.15 * Math.sin(2 * Math.PI * hz * frame / RATE + hz);
            }
        }
        return sum;
    }

    private static double mark(AlignmentMark mark, double frame) {
        double t = frame / RATE - AlignmentMark.GLIDE_S;
        return Math.abs(t) < AlignmentMark.GLIDE_S
                ? PEAK * mark.envelope(t) * Math.cos(mark.phase(t))
                : 0;
    }

    /** What a path returns that is late by a part of a frame, and fast, by the sound's formula. */
    private static MemoryAudio fast(MarkedSound sent, int frames, DoubleUnaryOperator soundAt) {
        AlignmentMark mark = new AlignmentMark(RATE);
        double[] y = new double[(int) sent.frames() + 2 * RATE];
        for (int i = 0; i < y.length; i++) {
            double place = soundAt.applyAsDouble(i);
            y[i] =
                    tones(place - sent.soundFrame(), frames)
                            + mark(mark, place)
                            + mark(mark, place - sent.secondMarkFrame());
        }
        return new MemoryAudio("return", RATE, y);
    }

    /**
     * What remains after the sound was put back: the interpolator is good to −100 dB of each sine,
     * and a place that is off by e frames leaves 2π·f/fs·e of it, which at 20 kHz and 1e-6 frames
     * is −112 dB. With five sines of 0.15 at most 5 · 0.15 · (10⁻⁵ + 2.6·10⁻⁶) = 9.5·10⁻⁶.
     */
    @Test
    void driftAndPartsOfAFrameAreTakenBack() {
        int frames = 5 * RATE;
        double[] stem = new double[frames];
        Arrays.setAll(stem, i -> tones(i, frames));
        MarkedSound sent = new MarkedSound(new MemoryAudio("stem", RATE, stem), 1, PEAK);
        MemoryAudio back = fast(sent, frames, i -> (i - LATE) * (1 + FAST));
        Alignment found = new MarkedReturn(sent, back).find(RATE);
        assertEquals(100, found.fastPpm(), 0.001);
        double[] heard = new StraightenedSound(back, found, 1, frames).read(0, frames)[0];
        double worst = 0;
        for (int i = 0; i < frames; i++) {
            worst = Math.max(worst, Math.abs(heard[i] - stem[i]));
        }
        System.out.printf("drift of 100 ppm taken back: %.2e of full scale is left%n", worst);
        assertTrue(worst < 9.5e-6, "left: " + worst);
    }

    @Test
    void readingInStretchesMakesNoDifference() {
        int frames = RATE;
        MarkedSound sent =
                new MarkedSound(new MemoryAudio("stem", RATE, new double[frames]), 1, PEAK);
        MemoryAudio back = fast(sent, frames, i -> (i - LATE) * (1 + FAST));
        Alignment found = new Alignment(13_000.3, 0.9999, List.of(1.0), 0, false);
        StraightenedSound whole = new StraightenedSound(back, found, 1, frames);
        double[] all = whole.read(-10, 3000)[0];
        assertTrue(Arrays.stream(all).anyMatch(v -> Math.abs(v) > PEAK / 2));
        for (int i = -10; i < 2990; i += 100) {
            assertArrayEquals(
                    Arrays.copyOfRange(all, i + 10, i + 110), whole.read(i, 100)[0], 1e-12);
        }
    }

    @Test
    void missingMarksAndMissingSoundAreTold() {
        double[][] stem = noise(3 * RATE);
        MarkedSound sent = new MarkedSound(new MemoryAudio("stem", RATE, stem), 1, PEAK);
        MemoryAudio back = recorded(sent, 500, 1, 1);
        double[][] none = new double[2][(int) back.frames()];
        assertTold("mark before it did not come back on channel 1", sent, none);
        double[][] half = back.read(0, (int) back.frames());
        half[1] = new double[half[0].length];
        assertTold("mark before it did not come back on channel 2", sent, half);
        double[][] early = back.read(0, 3 * RATE);
        assertTold("mark behind it did not come back on channel 1", sent, early);
        double[][] cut = new double[2][];
        for (int c = 0; c < 2; c++) {
            double[] x = back.read(0, (int) back.frames())[c];
            cut[c] = new double[x.length - 4800];
            System.arraycopy(x, 0, cut[c], 0, 2 * RATE);
            System.arraycopy(x, 2 * RATE + 4800, cut[c], 2 * RATE, cut[c].length - 2 * RATE);
        }
        assertTrue(
                new MarkedReturn(sent, new MemoryAudio("return", RATE, cut)).find(RATE).isBroken());
        assertFalse(new MarkedReturn(sent, back).find(RATE).isBroken());
    }

    private static void assertTold(String words, MarkedSound sent, double[][] heard) {
        MarkedReturn back = new MarkedReturn(sent, new MemoryAudio("return", RATE, heard));
        UnusableInputException told =
                assertThrows(UnusableInputException.class, () -> back.find(RATE));
        assertTrue(told.getMessage().contains(words), told.getMessage());
    }
}
