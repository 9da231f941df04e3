package offtape.report.apply.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.StepNoise;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;

/** Tapes whose K3 goes with the square of the amplitude: 2 dB a dB, 1 % at a chosen level. */
class LevelReadingTest {

    private static final Quantity NONE = Quantity.unknown("Not told here.");

    private static Distortion ladder(String channel, double onePercentAt) {
        double[] record = new double[18];
        Arrays.setAll(record, i -> -20 + 2 * i);
        double[] k3 =
                Arrays.stream(record).map(l -> Math.pow(10, (l - onePercentAt) / 10)).toArray();
        double[] doubt = Arrays.stream(k3).map(k -> 0.02 * k).toArray();
        double[] replay = Arrays.stream(record).map(l -> l - 0.1).toArray();
        LadderStep step =
                new LadderStep(
                        0,
                        -0.1,
                        null,
                        1.0,
                        null,
                        0.1,
                        null,
                        false,
                        new StepNoise(null, null, null, null, null, false));
        return new Distortion(
                channel,
                1000,
                List.of(step, step),
                Quantity.known(onePercentAt, "dB", 0.1),
                Quantity.known(onePercentAt + 10 * Math.log10(3), "dB", 0.1),
                Quantity.known(onePercentAt + 4, "dB", 0.1),
                NONE,
                NONE,
                NONE,
                NONE,
                new FittedCurve(record, k3, doubt, 0.5),
                new FittedCurve(record, replay, new double[18], 0.5));
    }

    private static OperatingLevels levels(Double referenceDbfs, double... wanted) {
        Session session = new Session("Deck", null, 190.5, "two-pass", "", null, null, null);
        Results results =
                new Results(
                        Results.FORMAT,
                        Results.VERSION,
                        referenceDbfs == null
                                ? session
                                : session.withRecording(48_000, "", referenceDbfs),
                        null,
                        null,
                        List.of(),
                        List.of(ladder("left", 3), ladder("right", 1)),
                        List.of(noise("left"), noise("right")),
                        null,
                        List.of(),
                        List.of(),
                        Verdict.open("None."),
                        null);
        return LevelReading.of(results, Arrays.stream(wanted).boxed().toList());
    }

    private static Noise noise(String channel) {
        Quantity a = Quantity.known(-60, "dB", 0.2);
        return new Noise(channel, a, a, a, NONE, List.of(), null, null, NONE, NONE, NONE);
    }

    /** 2 % lies 10·lg 2 dB above 1 %; the replay level is 0.1 dB less, and the noise at −60 dB. */
    @Test
    void levelsFollowTheCurve() {
        OperatingLevels levels = levels(-18.0, 2);
        ChannelLevels left = levels.channels().get(0);
        assertEquals(
                List.of(0.5, 1.0, 2.0, 3.0),
                left.atK3().stream().map(LevelAtK3::k3Percent).toList());
        LevelAtK3 two = left.atK3().get(2);
        double at = 3 + 10 * Math.log10(2);
        assertEquals(at, two.recordLevel().value(), 1e-6);
        assertEquals(at - 18, two.peaksDbfs().value(), 1e-6);
        assertEquals(at - 0.1, two.replayLevel().value(), 1e-6);
        assertEquals(at - 0.1 + 60, two.dynamicRange().value(), 1e-6);
        // 2 % of K3 are 0.17 dB of it, at 2 dB a dB half of that in level
        assertEquals(10 * Math.log10(1.02), two.recordLevel().uncertainty(), 0.005);
        assertEquals(2, left.k3At(at), 1e-6);
    }

    @Test
    void thePairIsTheChannelThatGetsThereFirst() {
        OperatingLevels levels = levels(-18.0);
        PairLevel one = levels.atK3(1).orElseThrow();
        assertEquals("right", one.channel());
        assertEquals(-17, one.peaksDbfs().value(), 1e-9);
        PairLevel oneDb = levels.atOneDb().orElseThrow();
        assertEquals(5, oneDb.recordLevel().value(), 1e-9);
    }

    @Test
    void whatTheLadderDoesNotReachIsUnknown() {
        ChannelLevels left = levels(-18.0, 25).channels().get(0);
        Quantity far = left.atK3().get(3).recordLevel();
        assertFalse(far.isKnown());
        assertTrue(far.reason().contains("stays under 25 % up to +14 dB"), far.reason());
        Quantity low = levels(-18.0, 0.001).channels().get(0).atK3().get(0).recordLevel();
        assertTrue(low.reason().contains("above 0.001 % already at -20 dB"), low.reason());
    }

    @Test
    void withoutAReferenceFullScaleIsUnknown() {
        PairLevel one = levels(null).atK3(1).orElseThrow();
        assertTrue(one.recordLevel().isKnown());
        assertFalse(one.peaksDbfs().isKnown());
    }
}
