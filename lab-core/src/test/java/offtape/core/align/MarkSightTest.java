package offtape.core.align;

import static offtape.core.align.HeardMark.RATE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read off a mark, from the theory of matched filters. */
class MarkSightTest {

    private static final double PEAK = 0.06;
    private static final double MIDDLE = 2500.3;

    private final MarkSight sight = new MarkSight(new AlignmentMark(RATE), RATE);

    private static double[] marked(double speed) {
        double[] x = new double[5000];
        HeardMark.add(x, RATE, MIDDLE, speed, PEAK);
        return x;
    }

    private FoundMark seen(double[] x, double near) {
        return sight.at(new MemoryAudio("x", RATE, x), 0, near, PEAK);
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "1, 3", "1, -3"})
    void placeAndLevelOfAMarkThatIsNear(double speed, double off) {
        FoundMark mark = seen(marked(speed), MIDDLE + off);
        assertEquals(MIDDLE, mark.frame(), 0.001);
        assertEquals(speed, mark.rate(), 1e-4);
        assertEquals(1, mark.gain(), 1e-3);
        assertEquals(1, mark.likeness(), 2e-3);
    }

    /**
     * Sound of energy N in the n frames beside a mark of energy S, both of it read: the mark
     * explains S/(S + N). Taken for white noise of variance N/n it leaves a level unsure by
     * √(N/(n·S)) of itself and a place by that over 2π times the rms width of the spectrum
     * (Woodward 1953), here 290.49 Hz. With N = S and n = 2000: 0.022361, and 4000 · 0.022361/(2π ·
     * 290.49) = 0.049004 frames; with N = 3S √3 times as much.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.5, 0.022361, 0.049004", "3, 0.25, 0.038730, 0.084878"})
    void whatItDoesNotExplainMakesItUnsure(
            double noise, double likeness, double doubtOfGain, double doubtFrames) {
        double[] x = marked(1);
        // a click 10 ms before the mark, within the 20 ms that are read about it
        x[(int) MIDDLE - 1040] = Math.sqrt(noise * HeardMark.energy(x));
        FoundMark mark = seen(x, MIDDLE);
        assertEquals(MIDDLE, mark.frame(), 0.01);
        assertEquals(likeness, mark.likeness(), 1e-3);
        assertEquals(doubtOfGain, mark.doubtOfGain(), 1e-3 * noise * doubtOfGain + 5e-5);
        assertEquals(doubtFrames, mark.doubtFrames(), 1e-3 * noise * doubtFrames + 1e-4);
    }

    /**
     * Hum under the mark's level is taken off its energy, hum above it is left out by the filter:
     * the level is told either way.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 1.5, 3})
    void humIsNotLevel(double peak) {
        double[] x = marked(1);
        HeardMark.hum(x, RATE, peak * PEAK);
        assertEquals(1, seen(x, MIDDLE).gain(), 0.01);
    }

    /**
     * A path that swings the phase by 1 rad at 12 Hz leaves energy as it is, and of what a filter
     * for the mark sees about J₀(1) = 0.77. The level is that of the energy, with hum beside it
     * too.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4})
    void swingingPhaseIsNotLevel(double hum) {
        AlignmentMark mark = new AlignmentMark(RATE);
        double[] x = new double[5000];
        for (int i = 1500; i <= 3500; i++) {
            double t = (i - 2500.0) / RATE;
            double swing = Math.sin(2 * Math.PI * 12 * t);
            x[i] = PEAK * mark.envelope(t) * Math.cos(mark.phase(t) + swing);
        }
        HeardMark.hum(x, RATE, hum * PEAK);
        assertEquals(1, seen(x, 2500).gain(), 0.01);
    }

    @Test
    void silenceIsNoMark() {
        FoundMark mark = seen(new double[5000], MIDDLE);
        assertEquals(MIDDLE, mark.frame());
        assertEquals(1, mark.rate());
        assertEquals(0, mark.gain());
        assertEquals(0, mark.likeness());
    }

    /**
     * The filter for the low ends, farther than 0.12 s from the middle, gives their energy over the
     * peak of the mark; with soft ends of 20 ms about (0.11 s + 3/8 · 0.02 s) · 4000/2 · 2 = 470.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.98, 1.02})
    void lowEndsGiveTheirEnergy(double speed) {
        double[] x = marked(speed);
        double low = 0;
        for (int i = 0; i < x.length; i++) {
            double t = (i - MIDDLE) * speed / RATE;
            low += Math.abs(t) > 0.12 ? x[i] * x[i] / PEAK : 0;
        }
        assertEquals(470 * PEAK / speed, low, 0.01 * 470 * PEAK);
        assertEquals(low, lowSum(x, speed), 1e-9);
        Arrays.setAll(x, i -> -x[i]);
        assertEquals(-low, lowSum(x, speed), 1e-9);
    }

    @Test
    void lowEndsBeyondWhatIsReadCountForNothing() {
        assertEquals(0, lowSum(new double[5000], 0.8));
    }

    private double lowSum(double[] x, double speed) {
        return sight.lowSum(new MemoryAudio("x", RATE, x), 0, MIDDLE, speed);
    }
}
