package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import offtape.core.programme.Cue;
import offtape.report.measure.distortion.LadderMeasure;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweepDistortionMeasureTest {

    private static final String STILL = "\"speedDeviationPercent\": 0";

    private static SweepBench bench(String transport, String saturation, double hissDb) {
        return SweepBench.of(
                String.format(
                        Locale.ROOT,
                        "\"transport\": {%s}, %s \"hiss\": {\"levelDb\": %s}",
                        transport,
                        saturation,
                        hissDb),
                6,
                0);
    }

    private static HarmonicCurve curve(SweepBench bench, int channel, int order) {
        var noise = bench.noise().densities()[channel];
        return new SweepDistortionMeasure(
                        HarmonicFollower.followLoudest(bench.ret()).orElseThrow(),
                        channel,
                        noise,
                        1)
                .measure()
                .get(order - 2);
    }

    /**
     * x − a·x³ of a sine of peak A has K3 = (aA²/4) / (1 − 3aA²/4) at every frequency. With 3 % at
     * peak P, aP² = 4·0.03 / 1.09 = 0.110092; 6.5 dB below P aA² = 0.110092 · 10^−0.65 = 0.024647,
     * so K3 = 0.0061617 / 0.981515 = 0.62778 %. A symmetric curve has no second harmonic. Within
     * the accuracy that is claimed for ladders under flutter.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                STILL,
                "\"components\": [{\"frequencyHz\": 9.55, \"peakPercent\": 0.2}]",
                "\"motion\": {\"recorded\": \"transport-a\"}",
                "\"motion\": {\"recorded\": \"transport-b\"}",
                "\"motion\": {\"recorded\": \"transport-c\"}"
            })
    void thirdHarmonicOfACubicCurveIsThatOfItsFormula(String transport) {
        String cubic = "\"saturation\": {\"kind\": \"cubic\", \"levelAtK3ThreePercentDb\": 6.5},";
        SweepBench bench = bench(transport, cubic, -58);
        int seen = 0;
        for (HarmonicCurve.Point p : curve(bench, 0, 3).points()) {
            if (p.frequencyHz() > 60 && p.frequencyHz() < 5500) {
                assertEquals(0.62778, p.percent(), 0.04 * 0.62778, p.toString());
                assertEquals(0.62778, p.percent(), p.uncertaintyPercent(), p.toString());
                seen++;
            }
        }
        assertEquals(39, seen, "six an octave over 6.5 octaves");
        for (HarmonicCurve.Point p : curve(bench, 0, 2).points()) {
            assertFalse(p.standsOut(), p.toString());
            assertTrue(p.frequencyHz() < 100 || p.floorPercent() < 0.05, p.toString());
        }
    }

    /** With emphasis the machine's own truth: the Fourier components of its curve. */
    @Test
    void emphasisShowsInBothHarmonics() {
        SweepBench bench =
                bench(
                        "\"speedDeviationPercent\": 0.4",
                        "\"saturation\": {\"kind\": \"tanh\", \"levelAtK3ThreePercentDb\": 5,"
                                + " \"secondHarmonicPercent\": 0.3, \"emphasisMicroseconds\": 50},"
                                + " \"electronics\": {\"lowerEdgeHz\": 30, \"upperEdgeHz\": 17000},",
                        -70);
        for (int order = 2; order <= 3; order++) {
            for (HarmonicCurve.Point p : curve(bench, 1, order).points()) {
                if (p.frequencyHz() > 80 && order * p.frequencyHz() < 14_000) {
                    double truth = bench.run().tone(1).harmonicPercent(order, p.frequencyHz(), 0);
                    assertEquals(truth, p.percent(), 0.03 * truth, order + " " + p);
                }
            }
        }
    }

    /** The sweep and the step of 1 kHz at the same level are two views of one thing. */
    @Test
    void sweepAndLadderAgree() {
        SweepBench bench =
                SweepBench.withSteps(
                        "\"transport\": {\"motion\": {\"recorded\": \"transport-b\"}},"
                                + " \"saturation\": {\"kind\": \"tanh\","
                                + " \"levelAtK3ThreePercentDb\": 6,"
                                + " \"secondHarmonicPercent\": 0.2, \"emphasisMicroseconds\": 35},"
                                + " \"hiss\": {\"levelDb\": -58}",
                        6,
                        0);
        ReferenceLevels reference = ReferenceLevels.measure(bench.ret()).orElseThrow();
        List<Distortion> ladders =
                new LadderMeasure(bench.ret(), reference, Leakage.NONE)
                        .measure(bench.ret().cues(Cue.Ladder.class).get(0));
        for (int c = 0; c < 2; c++) {
            LadderStep step = ladders.get(c).steps().get(1);
            assertEquals(step.k3Percent(), atOneKilohertz(bench, c, 3), 0.03 * step.k3Percent());
            assertEquals(step.k2Percent(), atOneKilohertz(bench, c, 2), 0.05 * step.k2Percent());
        }
    }

    private static double atOneKilohertz(SweepBench bench, int channel, int order) {
        return curve(bench, channel, order).points().stream()
                .filter(p -> Math.abs(p.frequencyHz() - 1000) < 1)
                .findFirst()
                .orElseThrow()
                .percent();
    }

    /** A tape that does not saturate has no harmonics, whatever its noise and its motion. */
    @ParameterizedTest
    @CsvSource({"-40, 1", "-65, 2"})
    void noneAreInvented(double hissDb, int seed) {
        String transport =
                "\"randomFlutter\": {\"rmsPercent\": 0.3, \"lowHz\": 0.5, \"highHz\": 120}";
        SweepBench bench = bench(transport, "\"seed\": " + seed + ",", hissDb);
        for (int order = 2; order <= 3; order++) {
            List<HarmonicCurve.Point> points = curve(bench, 0, order).points();
            assertTrue(points.size() > 30, "points " + points.size());
            // Below 120 Hz / (order − 1) sidebands of the fundamental itself reach the harmonic.
            points.stream()
                    .filter(p -> p.frequencyHz() > 120)
                    .forEach(p -> assertFalse(p.standsOut(), p.toString()));
        }
    }

    /** Noise of power N in the fundamental's units reads √N: four times less, half as loud. */
    @Test
    void theFloorFollowsTheHiss() {
        double loud = meanFloor(bench(STILL, "", -46));
        double soft = meanFloor(bench(STILL, "", -58));
        assertEquals(Math.pow(10, 12 / 20.0), loud / soft, 0.25);
    }

    private static double meanFloor(SweepBench bench) {
        return curve(bench, 0, 3).points().stream()
                .filter(p -> p.frequencyHz() > 300)
                .mapToDouble(HarmonicCurve.Point::floorPercent)
                .average()
                .orElseThrow();
    }

    /** The quiet sweep is not asked for its harmonics. */
    @Test
    void onlyTheLoudestSweepHasHarmonics() {
        SweepBench bench = SweepBench.of("\"hiss\": {\"levelDb\": -58}", 3, -20, 0);
        for (Response r : bench.responses()) {
            assertEquals(r.levelDb() == 0 ? 2 : 0, r.harmonics().size());
        }
    }
}
