package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Phases of a sweep on both channels. */
class PhaseBandsTest {

    private static PhaseBands bands(Pair pair, double speed) {
        ProgrammeReturn ret = pair.play();
        FollowedSweep sweep = Pair.follow(ret, Pair.SWEEP);
        return PhaseBands.of(sweep, Pair.noiseOf(ret), speed, Leakage.NONE);
    }

    /**
     * From 100 Hz to the sweep's end: 7.13 octaves of 48 bands. A delay of two frames, 62.5 µs, is
     * a phase of ω times that, without jumps though it is more than half a turn at the end; the
     * frequency in a recording that ran at another speed is as much higher.
     */
    @ParameterizedTest
    @CsvSource({"2, 1", "-2, 1.25"})
    void aDelayIsAPhaseThatRises(int frames, double speed) {
        PhaseBands bands = bands(Pair.of(Pair.SWEEP).late(frames), speed);
        assertEquals(48 * Math.log(140) / Math.log(2), bands.size(), 2);
        assertEquals(2 * Math.PI * 100 * speed, bands.radiansPerS(0), 0.015 * 628 * speed);
        assertEquals(
                2 * Math.PI * 14_000, bands.radiansPerS(bands.size() - 1) / speed, 0.03 * 8.8e4);
        for (int i = 0; i < bands.size(); i++) {
            double truth = 1e-6 * frames * Pair.FRAME_US * bands.radiansPerS(i) / speed;
            assertEquals(truth, bands.phase(i), 0.003 + 0.01 * Math.abs(truth));
            // a perfect path errs by 0.003 rad
            assertEquals(1 / (0.003 * 0.003), bands.weight(i), 1);
        }
    }

    /**
     * In noise a band's phase is worth what its time T lets the noise leave: white noise of a
     * deviation σ has the density d = 2σ²/rate and turns the phase of a sweep of peak A by a
     * variance of d/(A²·T) on each channel. The sweep's peak is 10^(−38/20), half of that on the
     * right; over the bands from 5 to 10 kHz the density of a short silence is known well.
     */
    @Test
    void weightsAreOneOverTheVariance() {
        double deviation = 1e-3;
        PhaseBands bands =
                bands(Pair.of(Pair.SILENCE, Pair.SWEEP).gains(1, 0.5).noise(deviation), 1);
        double density = 2 * deviation * deviation / Pair.RATE;
        double peak = Math.pow(10, -38 / 20.0);
        double seconds = Pair.SWEEP_S / (48 * Math.log(175) / Math.log(2));
        double variance = 0.003 * 0.003 + density / (peak * peak * seconds) * (1 + 1 / (0.5 * 0.5));
        double mean =
                IntStream.range(0, bands.size())
                        .filter(i -> bands.radiansPerS(i) > 2 * Math.PI * 5000)
                        .filter(i -> bands.radiansPerS(i) < 2 * Math.PI * 10_000)
                        .mapToDouble(bands::weight)
                        .average()
                        .orElseThrow();
        assertEquals(1, mean * variance, 0.1);
    }

    /**
     * A dead channel tells nothing: without noise no band at all; noise alone is rarely three times
     * over what it is on average.
     */
    @ParameterizedTest
    @CsvSource({"1, 0, 0, 0", "0, 1, 0, 0", "1, 0, 1e-3, 0.1", "0, 1, 1e-3, 0.1"})
    void aDeadChannelTellsNothing(double left, double right, double noise, double share) {
        PhaseBands bands =
                bands(Pair.of(Pair.SILENCE, Pair.SWEEP).gains(left, right).noise(noise), 1);
        assertEquals(0, bands.size(), share * 342);
    }

    /** A leak of 10 % each way brings the phases nearer to each other until it is taken out. */
    @Test
    void theLeakIsTakenOut() {
        ProgrammeReturn ret = Pair.of(Pair.SWEEP).late(1).leaks(0.1, 0.1).play();
        Leakage.Leak tenth = new Leakage.Leak(new Complex(0.1, 0), 1000);
        PhaseBands bands =
                PhaseBands.of(Pair.follow(ret, Pair.SWEEP), null, 1, new Leakage(tenth, tenth));
        for (int i = 0; i < bands.size(); i++) {
            double truth = 1e-6 * Pair.FRAME_US * bands.radiansPerS(i);
            assertEquals(truth, bands.phase(i), 0.003 + 0.01 * truth);
        }
    }
}
