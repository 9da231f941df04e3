package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import offtape.core.text.Language;
import org.junit.jupiter.api.Test;

/** A whole line-up over made-up ways whose truth is known. */
class LineupTest {

    private static final double DOWN = Math.pow(10, -1.3 / 20);

    private static double db(Readings r, int channel) {
        return r.tones().get(channel).levelDbfs() - r.desk().levelDbfs();
    }

    @Test
    void itBeginsWithNoiseAndAMark() {
        Random random = new Random(1);
        Bench bench =
                new Bench(View.GAINS, false)
                        .by(
                                (l, r) ->
                                        new double[] {
                                            l + 1e-4 * random.nextGaussian(),
                                            r + 1e-4 * random.nextGaussian()
                                        });
        assertEquals(Stage.NOISE, bench.run(0.5).stage());
        Readings marked = bench.run(1);
        assertEquals(Stage.MARK, marked.stage());
        // white noise of 1e-4 rms, 19 980 of 24 000 Hz, re a sine of -18 dBFS
        double noise = -80 + 10 * Math.log10(2 * 19_980 / 24_000.0);
        assertEquals(noise, marked.noise().get(0).unweightedDbfs(), 0.3);
        Readings r = bench.settle();
        assertEquals(Delay.State.FOUND, r.delay().state());
        assertEquals(100, r.delay().milliseconds(), 0.02);
        assertEquals(0, db(r, 0), 0.01);
    }

    @Test
    void balanceAndDistortionAreRead() {
        // K3 of 2 % by hand: a·A² = 4k/(1 + 3k) for y = x - a·x³
        double peak = Math.pow(10, -18 / 20.0);
        double a = 0.08 / 1.06 / (peak * peak);
        Readings r =
                new Bench(View.GAINS, false)
                        .by((l, q) -> new double[] {l - a * l * l * l, DOWN * q})
                        .settle();
        assertEquals(2, r.tones().get(0).k3Percent(), 0.04);
        assertEquals(-1.3, db(r, 1), 0.005);
        double fundamental = 1 - 0.75 * a * peak * peak;
        assertEquals(20 * Math.log10(fundamental), db(r, 0), 0.005);
    }

    /** From source to tape: 150 ms more, whatever the computer's buffers hold. */
    @Test
    void whatTheMarksTellApartIsTheChange() {
        Bench bench = new Bench(View.GAINS, false);
        assertEquals(1, bench.settle().delay().marks());
        bench.after(4800 + 7200).press(Key.MARK);
        Readings r = bench.settle();
        assertEquals(2, r.delay().marks());
        assertEquals(150, r.delay().moreMilliseconds(), 0.02);
        assertEquals(0, db(r, 0), 0.01);
    }

    @Test
    void afterTheComputerWasLateTheMarkIsTheFirstAnew() {
        Bench bench = new Bench(View.GAINS, false);
        bench.settle();
        bench.late = 1;
        bench.after(9000).press(Key.MARK);
        Delay delay = bench.settle().delay();
        assertEquals(1, delay.marks());
        assertTrue(delay.gaps());
        assertEquals(0, delay.moreMilliseconds());
    }

    @Test
    void aMarkThatDoesNotComeBackIsToldAndTheToneGoesOn() {
        Readings r = new Bench(View.GAINS, false).by((l, q) -> new double[] {0, 0}).settle();
        assertEquals(Delay.State.MISSING, r.delay().state());
        assertEquals(Stage.READING, r.stage());
        assertTrue(
                new LevelWords(Wording.in(Language.ENGLISH))
                        .of(r)
                        .get(0)
                        .startsWith("Nothing comes back."));
    }

    @Test
    void keysChangeWhatIsSentAndReadingsWait() {
        Bench bench = new Bench(View.GAINS, false);
        bench.settle();
        assertEquals(Stage.SETTLING, bench.press(Key.HIGH).run(0.25).stage());
        Readings high = bench.settle();
        assertEquals(10_000, high.desk().sentHz());
        assertEquals(0, db(high, 1), 0.01);
        assertNull(high.tones().get(0).k3Percent());
        bench.press(Key.LOUDER).press(Key.LEFT);
        Readings left = bench.settle();
        assertEquals(-17, left.tones().get(0).levelDbfs(), 0.01);
        assertEquals(-200, left.tones().get(1).levelDbfs(), 1e-9);
    }

    @Test
    void theNoiseIsTakenAgainAtAKey() {
        double[] hum = {0};
        int[] at = {0};
        Bench bench =
                new Bench(View.GAINS, false)
                        .by(
                                (l, r) -> {
                                    double h =
                                            hum[0] * Math.sin(2 * Math.PI * 997 * at[0]++ / 48_000);
                                    return new double[] {l + h, r};
                                });
        assertEquals(-200, bench.settle().noise().get(0).unweightedDbfs());
        hum[0] = 0.001;
        bench.press(Key.NOISE);
        Readings r = bench.settle();
        assertEquals(-60, r.noise().get(0).unweightedDbfs(), 0.02);
        assertEquals(-200, r.noise().get(1).unweightedDbfs());
        assertEquals(1, r.delay().marks());
    }

    /** Right comes a sample of 48 kHz later. */
    @Test
    void azimuthIsReadOnTheSentSound() {
        double[] before = {0};
        Bench bench =
                new Bench(View.AZIMUTH, false)
                        .by(
                                (l, r) -> {
                                    double late = before[0];
                                    before[0] = r;
                                    return new double[] {l, late};
                                });
        Readings r = bench.settle();
        assertEquals(1e6 / 48_000, r.pair().delayMicroseconds(), 0.1);
        assertEquals(
                20 * Math.log10(Math.cos(Math.PI * 10_000 / 48_000)), r.pair().monoLossDb(), 0.02);
    }

    /** Gain over bias as a parabola: 3 dB below the maximum at the end. */
    @Test
    void biasIsFollowedPastTheMaximum() {
        double[] bias = {-2};
        Bench bench =
                new Bench(View.BIAS, false)
                        .by(
                                (l, r) -> {
                                    double gain = Math.pow(10, -3 * bias[0] * bias[0] / 20);
                                    return new double[] {gain * l, gain * r};
                                });
        assertEquals(BiasTrack.Side.START, bench.settle().bias().get(0).side());
        for (bias[0] = -1.9; bias[0] < 0; bias[0] += 0.1) {
            bench.run(0.25);
        }
        assertEquals(BiasTrack.Side.CLIMBING, bench.run(1).bias().get(1).side());
        for (bias[0] = 0; bias[0] < 1; bias[0] += 0.1) {
            bench.run(0.25);
        }
        bias[0] = 1;
        BiasTrack end = bench.run(1.5).bias().get(1);
        assertEquals(BiasTrack.Side.OVER, end.side());
        assertEquals(3, end.belowDb(), 0.1);
        assertEquals(BiasTrack.Side.START, bench.press(Key.ANEW).run(0.25).bias().get(0).side());
    }

    @Test
    void aTapesToneIsFoundByItself() {
        int[] at = {0};
        Readings r =
                new Bench(View.TAPE, true)
                        .by(
                                (l, q) -> {
                                    double x = Math.sin(2 * Math.PI * 317.5 * at[0]++ / 48_000);
                                    return new double[] {0.1 * x, 0.1 * DOWN * x};
                                })
                        .settle();
        assertNotNull(r.tapeHz());
        assertEquals(317.5, r.tapeHz(), 0.2);
        assertEquals(-20, r.tones().get(0).levelDbfs(), 0.01);
        assertEquals(-21.3, r.tones().get(1).levelDbfs(), 0.01);
        assertEquals(
                java.util.List.of(
                        "Left is 2.0 dB low: raise its replay level.",
                        "Right is 3.3 dB low: raise its replay level."),
                new Words(Wording.in(Language.ENGLISH)).of(r));
    }

    @Test
    void clippingIsTold() {
        Readings r =
                new Bench(View.GAINS, false)
                        .by((l, q) -> new double[] {Math.max(-1, Math.min(1, 10 * l)), q})
                        .settle();
        assertTrue(r.peaks().get(0).clipped());
        assertTrue(
                new Words(Wording.in(Language.ENGLISH))
                        .of(r)
                        .get(0)
                        .startsWith("Left reaches full scale"));
    }
}
