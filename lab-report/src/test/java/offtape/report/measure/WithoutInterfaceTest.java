package offtape.report.measure;

import static offtape.report.measure.MadeResults.NO;
import static offtape.report.measure.MadeResults.about;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LadderStep;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Results made by hand, and an interface made by hand that is taken out of them. */
class WithoutInterfaceTest {

    private static final double[] HZ = {100, 1000, 4000};
    private static final LoopbackUse USE = new LoopbackUse("2024-05-01T10:00:00Z", "0".repeat(64));
    private static final Quantity TEN_MS = about(10, "ms");

    private static final StepNoise NOISE = new StepNoise(null, null, null, 0.03, 0.01, false);
    private static final LadderStep STEP =
            new LadderStep(0.0, 0.0, null, 0.5, 0.5, 0.0, 0.001, false, NOISE);

    private static InterfaceFigures.Channel channel(String name, double[] db) {
        double[] zero = new double[HZ.length];
        return new InterfaceFigures.Channel(
                name,
                -18.0,
                TEN_MS,
                db == null ? null : new InterfaceFigures.Curve(HZ, db, zero, zero),
                about(-64, "dB"),
                about(-66, "dB"),
                about(-56, "dB"),
                null,
                List.of(),
                List.of(
                        new InterfaceFigures.Ladder(
                                1000, List.of(new InterfaceFigures.Step(0, null, 0.04)))),
                List.of());
    }

    /** The left channel has a response of its own, the right one none that is known. */
    private static final InterfaceFigures.Channel LEFT = channel("left", new double[] {1, 0, -2});

    private static final InterfaceFigures.Channel RIGHT = channel("right", null);

    private static InterfaceFigures loop(
            Quantity delay, Quantity late, InterfaceFigures.Channel... channels) {
        return new InterfaceFigures(
                delay, null, late, about(-64, "dB"), about(-70, "dB"), List.of(channels));
    }

    private static Results heard(Quantity headDelay, Quantity late, Distortion... more) {
        List<Distortion> ladders = new ArrayList<>(List.of(more));
        ladders.add(MadeResults.ladder("left", 1000, about(8, "dB"), STEP));
        ladders.add(MadeResults.ladder("right", 1000, about(9, "dB"), STEP));
        return MadeResults.of(
                MadeResults.timing(headDelay, NO),
                List.of(
                        MadeResults.response("left", -20, HZ, 1, 0, -5),
                        MadeResults.response("right", -20, HZ, 2, 0, -6)),
                ladders,
                List.of(
                        MadeResults.noise("left", -58, -60, -50),
                        MadeResults.noise("right", -58, -60, -50)),
                MadeResults.pair(about(-40, "dB"), about(-50, "dB"), late));
    }

    private static Results heard() {
        return heard(NO, NO);
    }

    /** The reference tone at −18 dBFS on either channel, moved by so much. */
    private static ReferenceLevels returnedBy(double leftDb, double rightDb) {
        double[] peaks = {Math.pow(10, (leftDb - 18) / 20), Math.pow(10, (rightDb - 18) / 20)};
        return new ReferenceLevels(
                StraightReturn.tone("first"), peaks, Complex.ZERO, new double[2]);
    }

    private static Results without(
            InterfaceFigures figures, ReferenceLevels reference, Results heard) {
        double[] nothing = new double[StraightReturn.RATE];
        ProgrammeReturn ret = StraightReturn.of(nothing, nothing);
        LoopbackSession session =
                new LoopbackSession("loop/results.json", 8000, "1".repeat(64), USE, figures);
        return new WithoutInterface(KnownInterface.of(session), ret, reference).of(heard);
    }

    private static Results without(Results heard) {
        return without(loop(NO, NO, LEFT, RIGHT), returnedBy(0, 0), heard);
    }

    private static List<InterfaceShare.Entry> entries(Results results) {
        return results.interfaceShare().entries();
    }

    private static Stream<InterfaceShare.Entry> entries(Results results, String figure) {
        return entries(results).stream().filter(e -> e.figure().startsWith(figure));
    }

    /** What the interface takes off is given back; of a channel whose own is not known nothing. */
    @Test
    void theResponseIsOverThatOfTheInterface() {
        Results told = without(heard());
        Response left = told.response().get(0);
        assertArrayEquals(new double[] {0, 0, -3}, left.magnitudeDb(), 1e-9);
        Response right = told.response().get(1);
        assertArrayEquals(new double[] {2, 0, -6}, right.magnitudeDb(), 1e-9);
        List<InterfaceShare.Entry> shares = entries(told, "Response").toList();
        assertEquals(1, shares.size());
        assertEquals("left", shares.get(0).channel());
        assertEquals(-2, shares.get(0).own());
    }

    @Test
    void theInterfacesOwnResponseIsTold() {
        List<InterfaceShare.ChannelCurve> curves = without(heard()).interfaceShare().responses();
        assertEquals(1, curves.size());
        assertEquals("left", curves.get(0).channel());
        assertArrayEquals(HZ, curves.get(0).frequencyHz());
        assertArrayEquals(new double[] {1, 0, -2}, curves.get(0).magnitudeDb());
    }

    /**
     * Powers of independent noises add: 10·lg(10^−5.8 − 10^−6.4) = −59.256 dB, likewise −61.256 and
     * −51.256 dB; from the weighted one to a maximum output level of 8 dB are 69.256 dB.
     */
    @Test
    void theNoiseIsLessThatOfTheInterface() {
        Results told = without(heard());
        for (int c = 0; c < 2; c++) {
            Noise noise = told.noise().get(c);
            assertEquals(-59.2563, noise.unweighted().value(), 1e-3);
            assertEquals(-61.2563, noise.aWeighted().value(), 1e-3);
            assertEquals(-51.2563, noise.itu468().value(), 1e-3);
            assertEquals(69.2563 + c, noise.dynamicRange().value(), 1e-3);
        }
        assertEquals(
                List.of("left", "left", "left", "right", "right", "right"),
                entries(told, "Noise").map(InterfaceShare.Entry::channel).toList());
    }

    /** The tone comes back 3.0103 dB louder on the right: there the interface is 3.0103 dB less. */
    @Test
    void theNoiseOfTheInterfaceIsReTheReturnedTone() {
        Results told = without(loop(NO, NO, LEFT, RIGHT), returnedBy(0, 3.0103), heard());
        assertEquals(-59.2563, told.noise().get(0).unweighted().value(), 1e-3);
        // 10·lg(10^−5.8 − 10^−6.4 / 2)
        assertEquals(-58.5829, told.noise().get(1).unweighted().value(), 1e-3);
    }

    /** The first ladder of the channel that tells a maximum output level counts. */
    @Test
    void theRangeReachesToTheChannelsOwnMaximum() {
        Results heard =
                heard(
                        NO,
                        NO,
                        MadeResults.ladder("right", 315, about(5, "dB"), STEP),
                        MadeResults.ladder("left", 315, NO, STEP));
        Results told = without(heard);
        assertEquals(69.2563, told.noise().get(0).dynamicRange().value(), 1e-3);
        assertEquals(66.2563, told.noise().get(1).dynamicRange().value(), 1e-3);
    }

    /** Without a tone there is no zero for the interface's levels. */
    @Test
    void noiseWithoutAReferenceStays() {
        Results heard = heard();
        InterfaceFigures figures = loop(NO, NO, LEFT, RIGHT);
        assertEquals(heard.noise(), without(figures, null, heard).noise());
        Results one = without(figures, returnedBy(0, Double.NEGATIVE_INFINITY), heard);
        assertEquals(-59.2563, one.noise().get(0).unweighted().value(), 1e-3);
        assertSame(heard.noise().get(1), one.noise().get(1));
    }

    /** What the loop did not hear has nothing to be taken out. */
    @Test
    void aChannelOfWhichTheInterfaceIsNotKnownStays() {
        Results heard = heard();
        Results told = without(loop(NO, NO, LEFT), returnedBy(0, 0), heard);
        assertSame(heard.distortion().get(1), told.distortion().get(1));
        assertSame(heard.noise().get(1), told.noise().get(1));
        assertTrue(entries(told).stream().noneMatch(e -> "right".equals(e.channel())));
    }

    /** The phase between two harmonics is not known: 0.03 and 0.04 % are 0.05 %. */
    @Test
    void theDistortionOfTheInterfaceIsADoubt() {
        Results told = without(heard());
        for (int c = 0; c < 2; c++) {
            LadderStep step = told.distortion().get(c).steps().get(0);
            assertEquals(0.5, step.k3Percent());
            assertEquals(0.05, step.noise().k3UncertaintyPercent(), 1e-12);
        }
        List<InterfaceShare.Entry> shares =
                entries(told).stream().filter(e -> e.unit().equals("%")).toList();
        assertEquals(
                List.of("left", "right"),
                shares.stream().map(InterfaceShare.Entry::channel).toList());
        assertEquals(8, shares.get(0).sharePercent(), 1e-9);
    }

    /** 24 and 20 dB under what was heard are 6.31 and 10 % of it. */
    @Test
    void theCrosstalkOfTheInterfaceIsADoubt() {
        Results told = without(heard());
        Channels pair = told.channels();
        assertEquals(-40, pair.crosstalkLeftToRight().value());
        assertEquals(
                Math.hypot(0.1, -20 * Math.log10(1 - 0.0630957)),
                pair.crosstalkLeftToRight().uncertainty(),
                1e-5);
        assertEquals(
                Math.hypot(0.1, -20 * Math.log10(0.9)),
                pair.crosstalkRightToLeft().uncertainty(),
                1e-5);
        assertEquals(
                List.of(-64.0, -70.0),
                entries(told, "Crosstalk").map(InterfaceShare.Entry::own).toList());
    }

    @ParameterizedTest
    @CsvSource({"true, taken out of the delay of the heads", "false, stays in the delay"})
    void theDelayIsTakenOutWhereHeadsAreKnown(boolean heads, String treatment) {
        Results told =
                without(
                        loop(TEN_MS, NO, LEFT, RIGHT),
                        returnedBy(0, 0),
                        heard(heads ? about(95, "ms") : NO, NO));
        List<InterfaceShare.Entry> delays = entries(told, "Delay").toList();
        assertEquals(
                List.of(
                        new InterfaceShare.Entry(
                                "Delay", null, "ms", 10, 105.0, null, false, treatment)),
                delays);
        assertEquals(List.of(), entries(without(heard()), "Delay").toList());
    }

    /** What is told of the machine, 7 µs, and the interface's 20 µs were heard together. */
    @Test
    void theDelayBetweenTheChannelsIsToldAsItWasHeard() {
        Quantity own = about(20, "µs");
        Results told = without(loop(NO, own, LEFT), returnedBy(0, 0), heard(NO, about(7, "µs")));
        assertEquals(
                List.of(
                        new InterfaceShare.Entry(
                                "Interchannel delay, + right late",
                                null,
                                "µs",
                                20,
                                27.0,
                                null,
                                false,
                                "taken out")),
                entries(told, "Interchannel").toList());
        assertEquals(7, told.channels().interchannelDelay().value());
        assertEquals(
                0,
                entries(without(loop(NO, own, LEFT), returnedBy(0, 0), heard()), "Inter").count());
        assertEquals(
                0,
                entries(
                                without(
                                        loop(NO, NO, LEFT),
                                        returnedBy(0, 0),
                                        heard(NO, about(7, "µs"))),
                                "Inter")
                        .count());
    }

    /** 4 dB less on the right than in the loopback, and as much on the left. */
    @Test
    void aChangedGainIsToldOnItsChannel() {
        Results told = without(loop(NO, NO, LEFT, RIGHT), returnedBy(0, -4), heard());
        String said =
                told.health().stream()
                        .filter(n -> n.code().equals("interface-gain-changed"))
                        .findFirst()
                        .orElseThrow()
                        .message();
        assertTrue(said.contains("(-4.0 dB right)"), said);
        List<String> unchanged = codes(without(heard()));
        assertEquals(List.of("clipping", "loopback-used"), unchanged);
        double none = Double.NEGATIVE_INFINITY;
        assertEquals(
                unchanged, codes(without(loop(NO, NO, LEFT, RIGHT), returnedBy(0, none), heard())));
        assertEquals(unchanged, codes(without(loop(NO, NO, LEFT), returnedBy(0, -4), heard())));
        assertEquals(unchanged, codes(without(loop(NO, NO, LEFT, RIGHT), null, heard())));
    }

    private static List<String> codes(Results results) {
        return results.health().stream().map(HealthNote::code).toList();
    }

    @Test
    void theLoopbackIsNamedAndAllElseStays() {
        Results heard = heard();
        Results told = without(heard);
        assertEquals(heard.session().withLoopback(USE), told.session());
        assertEquals(heard.timing(), told.timing());
        assertEquals(heard.speed(), told.speed());
        assertEquals(heard.dropouts(), told.dropouts());
        assertEquals(heard.dropoutSummary(), told.dropoutSummary());
        assertEquals(heard.verdict(), told.verdict());
        assertNull(told.interfaceFigures());
        assertEquals(heard.health().get(0), told.health().get(0));
    }
}
