package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.PairPhaseCurve;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;

/**
 * All that is said of a pair: right 6 dB weaker and a frame of 31.25 µs late, a hundredth of left
 * in right, −0.004 of right in left, no noise.
 */
class ChannelMeasureTest {

    private static final Cue.Tone LONG = Pair.tone("long", ChannelSet.BOTH, 6.2, 4.2, 3150);
    private static final double DELAY_US = Pair.FRAME_US;

    private static final ProgrammeReturn RET =
            Pair.of(
                            Pair.SILENCE,
                            Pair.REFERENCE,
                            Pair.SWEEP,
                            Pair.LEFT_TONE,
                            Pair.RIGHT_TONE,
                            Pair.LEFT_SWEEP,
                            Pair.RIGHT_SWEEP,
                            LONG)
                    .gains(1, 0.5)
                    .late(1)
                    .leaks(0.01, -0.004)
                    .play();

    private static final FollowedSweep SWEEP = Pair.follow(RET, Pair.SWEEP);

    private static Session session() {
        TrackSpacing tracks = new TrackSpacing(null, 4, 0.04);
        return new Session(null, null, 190.5, "reference-tape", "", null, "", "", tracks);
    }

    private static Channels measure(
            ProgrammeReturn ret, FollowedSweep sweep, KnownInterface known) {
        return measure(ret, ReferenceLevels.measure(ret).orElse(null), sweep, known);
    }

    private static Channels measure(
            ProgrammeReturn ret,
            ReferenceLevels reference,
            FollowedSweep sweep,
            KnownInterface known) {
        CrosstalkMeasure crosstalk = new CrosstalkMeasure(ret, reference);
        return new ChannelMeasure(ret, reference, crosstalk, session())
                .measure(sweep, Pair.noiseOf(ret), known);
    }

    private static void assertHolds(double truth, double within, Quantity q) {
        assertEquals(truth, q.value(), q.uncertainty());
        assertTrue(q.uncertainty() < within, () -> q.toString());
    }

    /** The leaks are out of balance and delay, not of what is lost in mono. */
    @Test
    void everyFigureIsThatOfThePair() {
        Channels found = measure(RET, SWEEP, null);
        assertHolds(20 * Math.log10(0.5), 0.002, found.balance());
        assertHolds(DELAY_US, 0.1, found.interchannelDelay());
        // 190.5 mm/s · 31.25 µs over 4 mm are 1.48828 mrad, 5.1163 arc minutes
        assertHolds(5.1163, 0.06, found.azimuth());
        Complex right = Complex.polar(0.5, 2 * Math.PI * 1e4 * 1e-6 * DELAY_US);
        Complex left = new Complex(1, 0);
        double heardLeft = left.plus(right.times(-0.004)).size();
        double heardRight = right.plus(left.times(0.01)).size();
        double sum = right.times(0.996).plus(left.times(1.01)).size();
        double loss = 20 * Math.log10((heardLeft + heardRight) / sum);
        assertEquals(loss, found.monoLossAt10kHz().value(), 0.02);
        assertFalse(found.interchannelDelayWander().isKnown());
        assertEquals(found.interchannelDelayWander(), found.azimuthWander());
        assertEquals(0, found.responseDelay().value());
        assertEquals(0, found.phaseResidual().value(), 0.2);
        assertEquals(0, found.leakPhaseLeftToRight(), 0.5);
        assertEquals(180, Math.abs(found.leakPhaseRightToLeft()), 0.5);
        assertEquals(2, found.crosstalk().size());
        // which period of 3150 Hz is meant the sweep tells
        double[] trace = found.delayTrace().microseconds();
        assertEquals(DELAY_US, Arrays.stream(trace).average().orElseThrow(), 0.05);
        assertRightLags(found.phaseDifference());
    }

    /** 31.25 µs are 0.01125° a hertz. */
    private static void assertRightLags(PairPhaseCurve curve) {
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            double truth = -360e-6 * DELAY_US * curve.frequencyHz()[i];
            assertEquals(truth, curve.degrees()[i], 0.4 + 0.01 * Math.abs(truth));
        }
    }

    /** An interface whose right channel is 10 µs late, known within 0.04 µs. */
    @Test
    void anInterfaceIsTakenOut() {
        Channels found = measure(RET, SWEEP, late(10, 0.04));
        assertEquals(DELAY_US - 10, found.interchannelDelay().value(), 0.1);
        // 0.03 µs of its own, 0.05 % of 21.25 µs, and what is not known of the interface
        assertEquals(0.0511, found.interchannelDelay().uncertainty(), 0.005);
        double[] trace = found.delayTrace().microseconds();
        assertEquals(DELAY_US - 10, Arrays.stream(trace).average().orElseThrow(), 0.1);
    }

    private static KnownInterface late(double us, double uncertainty) {
        double[] hz =
                IntStream.range(0, 500).mapToDouble(i -> 20 * Math.pow(2, i / 48.0)).toArray();
        Quantity no = Quantity.unknown("not measured");
        InterfaceFigures figures =
                new InterfaceFigures(
                        no,
                        null,
                        Quantity.known(us, "µs", uncertainty),
                        no,
                        no,
                        List.of(channel("left", hz, 0), channel("right", hz, us)));
        return KnownInterface.of(
                new LoopbackSession("file", Pair.RATE, "", new LoopbackUse("", ""), figures));
    }

    private static InterfaceFigures.Channel channel(String name, double[] hz, double us) {
        Quantity no = Quantity.unknown("not measured");
        double[] zero = new double[hz.length];
        double[] phase = Arrays.stream(hz).map(f -> -360e-6 * us * f).toArray();
        return new InterfaceFigures.Channel(
                name,
                -18.0,
                no,
                new InterfaceFigures.Curve(hz, zero, phase, zero),
                no,
                no,
                no,
                null,
                List.of(),
                List.of(),
                List.of());
    }

    @Test
    void withoutASweepTheRestIsTold() {
        Channels found = measure(RET, null, null);
        assertHolds(20 * Math.log10(0.5), 0.002, found.balance());
        assertTrue(found.crosstalkLeftToRight().isKnown());
        assertEquals(
                "The programme has no sweep on both channels.", found.interchannelDelay().reason());
        assertEquals(found.interchannelDelay(), found.azimuth());
        assertEquals(found.interchannelDelay(), found.monoLossAt10kHz());
        assertEquals(List.of(), found.crosstalk());
        assertNull(found.phaseDifference());
        // no delay is known to lay the trace at
        double[] trace = found.delayTrace().microseconds();
        assertEquals(0, Arrays.stream(trace).average().orElseThrow(), 0.01);
    }

    /** A recording that ends within the sweep; one that ends within another says nothing of it. */
    @Test
    void aSweepThatWasCutOffIsSaid() {
        ProgrammeReturn cut = Pair.of(Pair.REFERENCE, Pair.SWEEP).playUntil(2);
        String reason = measure(cut, null, null).interchannelDelay().reason();
        assertTrue(reason.contains("2.0 s"), reason);
        ProgrammeReturn other = Pair.of(Pair.REFERENCE, Pair.LEFT_SWEEP).playUntil(4);
        assertEquals(
                "The programme has no sweep on both channels.",
                measure(other, null, null).interchannelDelay().reason());
    }

    @Test
    void aPairNeedsTwoChannels() {
        Channels one = measure(Pair.of(Pair.REFERENCE).playLeft(), null, null);
        assertEquals("The recording has one channel only.", one.balance().reason());
        assertEquals(one.balance(), one.interchannelDelay());
        ProgrammeReturn dead = Pair.of(Pair.REFERENCE).gains(0, 1).play();
        assertEquals(
                "The left channel is dead, so there is nothing to compare.",
                measure(dead, null, null).balance().reason());
        dead = Pair.of(Pair.REFERENCE).gains(1, 0).play();
        assertEquals(
                "The right channel is dead, so there is nothing to compare.",
                measure(dead, null, null).balance().reason());
    }

    /** Without a reference tone, or where nobody hears it, on either channel. */
    @Test
    void balanceNeedsTheReference() {
        String reason = "The reference tone was not heard on both channels.";
        ProgrammeReturn none = Pair.of(Pair.SWEEP).play();
        assertEquals(reason, measure(none, null, null).balance().reason());
        ProgrammeReturn silent = Pair.of(Pair.REFERENCE).gains(0, 0).play();
        assertEquals(reason, measure(silent, null, null).balance().reason());
    }

    /** Twice √(0.003² + 0.004²) of the ratio, 8.686 dB each: 0.08686 dB. */
    @Test
    void balanceIsAsSureAsTheReference() {
        ProgrammeReturn ret = Pair.of(Pair.REFERENCE).play();
        ReferenceLevels reference =
                new ReferenceLevels(
                        Pair.REFERENCE,
                        new double[] {0.1, 0.05},
                        new Complex(-0.5, 0),
                        new double[] {0.003, 0.004});
        Quantity balance = measure(ret, reference, null, null).balance();
        assertEquals(-6.0206, balance.value(), 1e-4);
        assertEquals(0.08686, balance.uncertainty(), 1e-5);
    }
}
