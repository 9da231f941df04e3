package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedSweep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loss at 10 kHz of channels that lie some frames of 31.25 µs apart: 1.9635 rad each. */
class MonoLossTest {

    private static final Quantity STEADY = Quantity.unknown("no wander");
    private static final FollowedSweep ALIKE = followed(Pair.of(Pair.SWEEP));

    private static final FollowedSweep LATE = followed(Pair.of(Pair.SWEEP).late(1));

    private static FollowedSweep followed(Pair pair) {
        return Pair.follow(pair.play(), Pair.SWEEP);
    }

    private static InterchannelDelay delay(double us) {
        Quantity zero = Quantity.known(0, "µs", 0.1);
        return new InterchannelDelay(Quantity.known(us, "µs", 0.1), zero, zero, false);
    }

    /**
     * |L| + |R| over |L + R|: of equal channels 1/cos(φ/2), 5.1054 dB at a frame; with one half as
     * loud 10·lg (2.25/(1.25 + cos φ)), 4.1400 dB. Sixteen frames are five whole periods: no loss,
     * though the bands around 10 kHz lie far apart. Opposite channels cancel; 60 dB is the most
     * that is told.
     */
    @ParameterizedTest
    @CsvSource({
        "0, -1, 60, 0",
        "1, 0.5, 4.1400, 0.01",
        "-16, 1, 0, 0.05",
        "0, -0.5, 9.5424, 0.001"
    })
    void lossOfADelay(int frames, double right, double lossDb, double within) {
        FollowedSweep sweep = followed(Pair.of(Pair.SWEEP).gains(1, right).late(frames));
        Quantity loss = MonoLoss.of(sweep, null, 1, delay(frames * Pair.FRAME_US), STEADY);
        assertEquals(lossDb, loss.value(), within);
        assertEquals("dB", loss.unit());
    }

    @Test
    void aFrameOfDelay() {
        Quantity loss = MonoLoss.of(LATE, null, 1, delay(Pair.FRAME_US), STEADY);
        assertEquals(5.1054, loss.value(), 0.01);
    }

    /** What different responses add to the delay turns the bands as well: 600 − 100 µs. */
    @Test
    void theDelayOfResponsesCounts() {
        FollowedSweep sweep = followed(Pair.of(Pair.SWEEP).late(16));
        Quantity zero = Quantity.known(0, "µs", 0.1);
        Quantity head = Quantity.known(600, "µs", 0.1);
        Quantity added = Quantity.known(-100, "µs", 0.1);
        InterchannelDelay both = new InterchannelDelay(head, added, zero, false);
        assertEquals(0, MonoLoss.of(sweep, null, 1, both, STEADY).value(), 0.05);
        InterchannelDelay head500 = delay(16 * Pair.FRAME_US);
        assertEquals(0, MonoLoss.of(sweep, null, 1, head500, STEADY).value(), 0.05);
        // on a tape twice as fast half the delay turns them as far
        InterchannelDelay head250 = delay(8 * Pair.FRAME_US);
        assertEquals(0, MonoLoss.of(sweep, null, 2, head250, STEADY).value(), 0.05);
    }

    /**
     * Channels in step that wander by s radians rms keep the share e^(−s²/2) in common. 5 µs are
     * 0.31416 rad: 10·lg (4/(2 + 2·0.95185)) = 0.10584 dB; twice as fast a tape makes 0.62832 rad
     * of them, 0.40751 dB. The mean may lie 2·s elsewhere: there the loss is 0.53042 dB.
     */
    @Test
    void wanderLosesToo() {
        Quantity wander = Quantity.known(5, "µs", 0.1);
        Quantity loss = MonoLoss.of(ALIKE, null, 1, delay(0), wander);
        assertEquals(0.10584, loss.value(), 1e-4);
        assertEquals(0.53042 - 0.10584, loss.uncertainty(), 1e-4);
        assertEquals(0.40751, MonoLoss.of(ALIKE, null, 2, delay(0), wander).value(), 1e-4);
    }

    /** The path's own 0.003 dB, and 0.002 rad where a phase costs: 4.343·tan(φ/2) dB a radian. */
    @Test
    void aCleanPathHasLittleDoubt() {
        assertEquals(0.003, MonoLoss.of(ALIKE, null, 1, delay(0), STEADY).uncertainty(), 1e-5);
        double steep = 4.343 * Math.tan(1.9635 / 2);
        Quantity loss = MonoLoss.of(LATE, null, 1, delay(Pair.FRAME_US), STEADY);
        assertEquals(Math.hypot(0.003, 0.002 * steep), loss.uncertainty(), 1e-4);
    }

    /**
     * White noise of a deviation σ has the density d = 2σ²/rate, which turns the phase of a sweep
     * of peak A over a time T by √(2d/(A²·T)), both channels together. Five bands of a forty-eighth
     * of an octave last 5 · 1 s/(48 · lb 175) = 14 ms. The sweep's peak is 10^(−38/20).
     */
    @Test
    void noiseIsDoubt() {
        double deviation = 2e-4;
        ProgrammeReturn ret = Pair.of(Pair.SILENCE, Pair.SWEEP).late(1).noise(deviation).play();
        Quantity loss =
                MonoLoss.of(
                        Pair.follow(ret, Pair.SWEEP),
                        Pair.noiseOf(ret),
                        1,
                        delay(Pair.FRAME_US),
                        STEADY);
        double density = 2 * deviation * deviation / Pair.RATE;
        double peak = Math.pow(10, -38 / 20.0);
        double seconds = 5 * Pair.SWEEP_S / (48 * Math.log(175) / Math.log(2));
        double turn = 2 * Math.sqrt(2 * density / (peak * peak * seconds));
        double doubt = 4.343 * Math.tan(1.9635 / 2) * Math.hypot(turn, 0.002);
        assertEquals(doubt, loss.uncertainty(), 0.1 * doubt);
        assertEquals(5.1054, loss.value(), loss.uncertainty());
    }

    /**
     * Noise adds to the power of each channel but not to what they have in common. The sweep is
     * followed within some 200 Hz on both sides there, where white noise has d · 400/2, d =
     * 2σ²/rate, a share of 0.032 of A²/4. A frame apart (2.063 − 0.765)/4.127 in place of (2 −
     * 0.765)/4 is 0.08 dB less of a loss, until it is taken out.
     */
    @Test
    void noiseIsTakenOut() {
        ProgrammeReturn ret = Pair.of(Pair.SILENCE, Pair.SWEEP).late(1).noise(1e-2).play();
        FollowedSweep sweep = Pair.follow(ret, Pair.SWEEP);
        InterchannelDelay frame = delay(Pair.FRAME_US);
        double with = MonoLoss.of(sweep, null, 1, frame, STEADY).value();
        double without = MonoLoss.of(sweep, Pair.noiseOf(ret), 1, frame, STEADY).value();
        assertEquals(0.08, without - with, 0.03);
    }

    @Test
    void whatIsMissingIsSaid() {
        Cue.Sweep low = Pair.sweep("sweep", ChannelSet.BOTH, 1.7, 20, 9500, -20);
        FollowedSweep followed = Pair.follow(Pair.of(low).play(), low);
        Quantity none = MonoLoss.of(followed, null, 1, delay(0), STEADY);
        assertEquals("The sweep does not reach 10 kHz.", none.reason());
        InterchannelDelay unknown = InterchannelDelay.unknown("nobody knows");
        assertEquals("nobody knows", MonoLoss.of(ALIKE, null, 1, unknown, STEADY).reason());
        FollowedSweep dead = followed(Pair.of(Pair.SWEEP).gains(1, 0));
        Quantity silent = MonoLoss.of(dead, null, 1, delay(0), STEADY);
        assertEquals("At 10 kHz a channel is not heard above the noise.", silent.reason());
    }
}
