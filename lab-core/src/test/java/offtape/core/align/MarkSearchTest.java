package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How well a mark is found whose place is known. */
class MarkSearchTest {

    private static final int RATE = 48_000;
    private static final double PEAK = 0.06;

    /** A second of silence with the mark in it, later by a fraction of a frame. */
    private static double[] delayed(int rate, double frames) {
        int n = 1 << 17;
        double[] x = new double[n];
        double[] mark = new AlignmentMark(rate).samples();
        for (int i = 0; i < mark.length; i++) {
            x[i] = PEAK * mark[i];
        }
        // the law of delay for spectra: no interpolator of ours has a part in it
        RealFft fft = RealFft.ofSize(n);
        Spectrum s = fft.forward(x);
        double[] re = new double[s.bins()];
        double[] im = new double[s.bins()];
        for (int k = 0; k < s.bins(); k++) {
            double turn = -2 * Math.PI * k * frames / n;
            re[k] = s.re(k) * Math.cos(turn) - s.im(k) * Math.sin(turn);
            im[k] = s.re(k) * Math.sin(turn) + s.im(k) * Math.cos(turn);
        }
        return fft.inverse(Spectrum.of(n, re, im));
    }

    private static FoundMark found(int rate, double[] x) {
        Optional<FoundMark> mark =
                new MarkSearch(rate).find(new MemoryAudio("x", rate, x), 0, 0, x.length, PEAK);
        assertTrue(mark.isPresent());
        return mark.get();
    }

    private static double middle(int rate) {
        return 0.25 * rate;
    }

    @ParameterizedTest
    @CsvSource({"48000, 12345", "48000, 20000.317", "44100, 9876.21"})
    void onACleanPathWithinAThousandthOfAFrame(int rate, double frames) {
        FoundMark mark = found(rate, delayed(rate, frames));
        System.out.printf(
                "mark at %d Hz: off by %.2e frames, rate %.2e, gain %.2e, doubt %.2e%n",
                rate,
                mark.frame() - middle(rate) - frames,
                mark.rate() - 1,
                mark.gain() - 1,
                mark.doubtFrames());
        assertEquals(frames + middle(rate), mark.frame(), 1e-3);
        assertEquals(1, mark.rate(), 1e-5);
        assertEquals(1, mark.gain(), 1e-4);
        assertTrue(mark.likeness() > 0.9999);
    }

    /** White noise 40 dB under the mark's rms; three draws, the worst within a hundredth. */
    @Test
    void inNoiseWithinAHundredthOfAFrame() {
        double worst = 0;
        for (int seed = 0; seed < 3; seed++) {
            Random random = new Random(seed);
            double[] x = delayed(RATE, 15_000.4);
            for (int i = 0; i < x.length; i++) {
                x[i] += 0.01 * PEAK / Math.sqrt(2) * random.nextGaussian();
            }
            FoundMark mark = found(RATE, x);
            double off = Math.abs(mark.frame() - middle(RATE) - 15_000.4);
            assertTrue(off < 4 * mark.doubtFrames(), off + " of " + mark.doubtFrames());
            worst = Math.max(worst, off);
        }
        System.out.printf("mark in noise of -40 dB: worst %.2e frames%n", worst);
        assertTrue(worst < 0.01);
    }

    /**
     * The mark as a path returns it that is late by a course of time: x(t) = mark(t − late(t)),
     * from the mark's formula.
     */
    private static double[] warped(DoubleUnaryOperator lateSeconds) {
        AlignmentMark mark = new AlignmentMark(RATE);
        double[] x = new double[2 * RATE];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE;
            double place = t - lateSeconds.applyAsDouble(t) - 0.25;
            x[i] =
                    Math.abs(place) < 0.25
                            ? PEAK * mark.envelope(place) * Math.cos(mark.phase(place))
                            : 0;
        }
        return x;
    }

    /**
     * Under wow of peak d at f Hz lateness swings by d/(2πf): 3.8 frames at 0.2 % and 4 Hz, 1.5 at
     * 10 Hz. What the mark is taken for lies between that of its middle and the mean. Its level,
     * read as energy, moves by no more than the speed, 0.2 % or 0.02 dB, and it is not turned over.
     */
    @ParameterizedTest
    @CsvSource({"4, 0", "4, 1.6", "10, 2", "30, 1"})
    void underWowWithinItsSwing(double hz, double phase) {
        double swing = 0.002 / (2 * Math.PI * hz);
        double[] x = warped(t -> 0.5 + swing * Math.sin(2 * Math.PI * hz * t + phase));
        FoundMark mark = found(RATE, x);
        double off = mark.frame() - 0.75 * RATE;
        double ofMiddle = swing * RATE * Math.sin(2 * Math.PI * hz * 0.75 + phase);
        System.out.printf(
                "mark under 0.2 %% at %.0f Hz: late by %.2f frames, its middle %.2f, gain %.4f%n",
                hz, off, ofMiddle, mark.gain());
        assertEquals(ofMiddle, off, swing * RATE);
        assertEquals(1, mark.gain(), 0.002);
        assertFalse(isInverted(x, 1, mark));
        Arrays.setAll(x, i -> -x[i]);
        assertTrue(isInverted(x, 1, mark));
    }

    private static boolean isInverted(double[] x, double rate, FoundMark mark) {
        return new MarkSearch(RATE).isInverted(new MemoryAudio("x", RATE, x), 0, rate, mark);
    }

    /** A path that is fast by a share: the middle stays where it is and the speed is told. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 0.02, -0.02})
    void wrongSpeedMovesNothing(double fast) {
        // the mark's middle comes at 0.75 s, and t − late runs fast
        double[] x = warped(t -> 0.5 - fast * (t - 0.75));
        FoundMark mark = found(RATE, x);
        assertEquals(0.75 * RATE, mark.frame(), 1e-3);
        assertEquals(1 + fast, mark.rate(), 1e-6);
        assertFalse(isInverted(x, 1 + fast, mark));
    }

    @Test
    void levelAndPolarityAreRead() {
        double[] x = delayed(RATE, 7000.25);
        for (int i = 0; i < x.length; i++) {
            x[i] *= -0.4;
        }
        FoundMark mark = found(RATE, x);
        assertEquals(0.4, mark.gain(), 1e-5);
        assertTrue(isInverted(x, 1, mark));
    }

    /** Hum as strong as the mark halves what the mark explains; its level is still read. */
    @Test
    void humBesideItIsNotItsLevel() {
        double[] x = delayed(RATE, 24_000.5);
        for (int i = 0; i < x.length; i++) {
            x[i] += 0.1 * PEAK * Math.sin(2 * Math.PI * 50 * i / RATE);
        }
        FoundMark mark = found(RATE, x);
        assertEquals(24_000.5 + middle(RATE), mark.frame(), 0.01);
        assertEquals(1, mark.gain(), 1e-3);
    }

    /** Music that is ten times as loud is no mark, and the first of two marks is the one. */
    @Test
    void theFirstMarkIsFoundBesideLouderSound() {
        double[] one = delayed(RATE, 10_000);
        double[] x = new double[6 * RATE];
        Random random = new Random(4);
        double slow = 0;
        for (int i = 0; i < x.length; i++) {
            slow += 0.02 * (random.nextGaussian() - slow);
            x[i] = i > 50_000 && i < 200_000 ? 3 * slow : 0;
        }
        for (int i = 0; i < one.length && i < 40_000; i++) {
            x[i] += one[i];
            x[i + 205_000] += one[i];
        }
        assertEquals(22_000, found(RATE, x).frame(), 0.001);
    }

    /** A leak of the mark, 40 dB down and a second early, is not taken for it. */
    @Test
    void aLeakBeforeItIsNotTheMark() {
        double[] one = delayed(RATE, 5_000);
        double[] x = new double[3 * RATE];
        for (int i = 0; i < 32_000; i++) {
            x[i] += 0.01 * one[i];
            x[i + RATE] += one[i];
        }
        assertEquals(RATE + 17_000, found(RATE, x).frame(), 0.001);
    }

    @Test
    void nothingIsFoundWhereNothingIs() {
        MarkSearch search = new MarkSearch(RATE);
        double[] noise = new Random(1).doubles(3L * RATE, -0.5, 0.5).toArray();
        double[] silence = new double[3 * RATE];
        double[] tone = new double[3 * RATE];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = 0.5 * Math.sin(2 * Math.PI * 1000 * i / RATE);
        }
        for (double[] x : new double[][] {noise, silence, tone, new double[10]}) {
            MemoryAudio sound = new MemoryAudio("x", RATE, x);
            assertTrue(search.find(sound, 0, 0, x.length, PEAK).isEmpty());
        }
    }
}
