package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.TapeSpeed;
import offtape.reference.Source;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.speed.BareTone;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The measures against figures that numpy and scipy give for the same signals: {@code
 * numerical-package.py} beside the data holds formulas and parameters. The programme returns on the
 * left through two Butterworth filters with noise behind them, on the right through a curve.
 */
@Source("numpy and scipy, numerical-package.json")
class NumericalPackageTest {

    private static final int RATE = 48_000;
    private static final int DELAY = 12_345;
    private static final double NOISE = 0.0004;

    private static JsonNode figures;
    private static Results results;

    @BeforeAll
    static void measure() throws IOException {
        figures =
                new ObjectMapper()
                        .readTree(NumericalPackageTest.class.getResource("numerical-package.json"));
        CueSheet sheet = TrialSheet.of(new TapeSpeed(190.5), RATE);
        double[][] sent = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        double[][] heard = new double[2][sent[0].length + 2 * DELAY];
        for (int i = 0; i < sent[0].length; i++) {
            heard[0][i + DELAY] = sent[0][i];
            heard[1][i + DELAY] = bent(sent[1][i]);
        }
        figures.get("sections").forEach(s -> filter(heard[0], s));
        Congruential source = new Congruential(2026);
        double before = 0;
        for (int i = 0; i < heard[0].length; i++) {
            before = source.next() + 0.6 * before;
            heard[0][i] += NOISE * before;
        }
        results =
                Measurement.run(
                        new Programme(sheet, new MemoryAudio("programme", RATE, sent)),
                        new MemoryAudio("return", RATE, heard),
                        new Session(null, null, null, "reference-tape", "", null, "", ""),
                        Capture.of(CaptureMode.REFERENCE_TAPE),
                        List.of());
    }

    private static double bent(double x) {
        return Math.tanh(2.6 * x) / 2.6 + 0.004 * x * x;
    }

    /** A second-order section b0 b1 b2 a0 a1 a2, in direct form. */
    private static void filter(double[] x, JsonNode section) {
        double[] s = new double[6];
        for (int i = 0; i < 6; i++) {
            s[i] = section.get(i).doubleValue();
        }
        double first = 0;
        double second = 0;
        for (int i = 0; i < x.length; i++) {
            double y = s[0] * x[i] + first;
            first = s[1] * x[i] - s[4] * y + second;
            second = s[2] * x[i] - s[5] * y;
            x[i] = y;
        }
    }

    /** Knuth's congruential generator for MMIX, uniform in −1 to 1. */
    private static final class Congruential {
        private long state;

        Congruential(long seed) {
            state = seed;
        }

        double next() {
            state = state * 6364136223846793005L + 1442695040888963407L;
            return (state >>> 11) / 0x1p52 - 1;
        }
    }

    private static double figure(String group, String name) {
        return figures.get(group).get(name).doubleValue();
    }

    private static Response left() {
        return results.response().stream()
                .filter(r -> r.channel().equals("left"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theResponseIsThatOfTheFilters() {
        JsonNode hz = figures.get("response").get("frequencyHz");
        double worst = 0;
        for (int i = 0; i < hz.size(); i++) {
            double found = at(left(), hz.get(i).doubleValue());
            double right = figures.get("response").get("magnitudeDb").get(i).doubleValue();
            worst = Math.max(worst, Math.abs(found - right));
        }
        System.out.printf("response against scipy: worst %.4f dB%n", worst);
        assertTrue(worst < 0.1, "worst " + worst);
    }

    /** Every second point of the response lies on a twelfth of an octave or between two. */
    private static double at(Response r, double hz) {
        int i = 0;
        while (r.frequencyHz()[i + 1] < hz) {
            i++;
        }
        double part =
                Math.log(hz / r.frequencyHz()[i])
                        / Math.log(r.frequencyHz()[i + 1] / r.frequencyHz()[i]);
        return r.magnitudeDb()[i] * (1 - part) + r.magnitudeDb()[i + 1] * part;
    }

    @Test
    void theEdgesAreThoseOfTheFilters() {
        double lower = figure("response", "lowerEdgeHz");
        double upper = figure("response", "upperEdgeHz");
        assertEquals(lower, left().lowerEdge().value(), 0.01 * lower);
        assertEquals(upper, left().upperEdge().value(), 0.005 * upper);
    }

    private static Distortion bentPath() {
        return results.distortion().stream()
                .filter(d -> d.channel().equals("right"))
                .findFirst()
                .orElseThrow();
    }

    /** Relative to the reading; the path has no noise but that of arithmetic. */
    private void stepsAgree(String name, ToDoubleFunction<LadderStep> found) {
        JsonNode levels = figures.get("distortion").get("recordLevelDb");
        for (int i = 0; i < levels.size(); i++) {
            double level = levels.get(i).doubleValue();
            LadderStep step =
                    bentPath().steps().stream()
                            .filter(s -> s.recordLevelDb() == level)
                            .findFirst()
                            .orElseThrow();
            double right = figures.get("distortion").get(name).get(i).doubleValue();
            assertEquals(right, found.applyAsDouble(step), 0.002 * right, name + " at " + level);
        }
    }

    @Test
    void theHarmonicsAreThoseOfTheCurve() {
        stepsAgree("k2Percent", LadderStep::k2Percent);
        stepsAgree("k3Percent", LadderStep::k3Percent);
    }

    @Test
    void theLevelsAreThoseOfTheCurve() {
        Distortion d = bentPath();
        assertEquals(
                figure("distortion", "levelAtK3ThreePercent"),
                d.levelAtK3ThreePercent().value(),
                0.03);
        assertEquals(
                figure("distortion", "levelAtK3OnePercent"), d.levelAtK3OnePercent().value(), 0.03);
        assertEquals(
                figure("distortion", "maximumOutputLevel"), d.maximumOutputLevel().value(), 0.03);
    }

    @Test
    void theNoiseIsThatOfItsDensity() {
        Noise noise = results.noise().get(0);
        assertEquals(figure("noise", "unweighted"), noise.unweighted().value(), 0.1);
        assertEquals(figure("noise", "aWeighted"), noise.aWeighted().value(), 0.1);
    }

    @Test
    void theReadingsOfSpeedAreThoseOfTheDemodulatedTone() {
        Congruential source = new Congruential(7);
        double[] tone = new double[40 * RATE];
        double[][] lines = {{0.8, 0.15, 0}, {20, 0.08, 1}, {40, 0.05, 2}};
        for (int i = 0; i < tone.length; i++) {
            double t = (double) i / RATE;
            double phase = 2 * Math.PI * 3150 * 1.004 * t;
            for (double[] line : lines) {
                double index = 3150 * line[1] / 100 / line[0];
                phase -= index * Math.cos(2 * Math.PI * line[0] * t + line[2]);
            }
            double level = 0.1 * (1 + 0.2 * Math.sin(2 * Math.PI * 3.3 * t));
            tone[i] = level * Math.sin(phase) + 0.0003 * source.next();
        }
        Speed speed =
                BareTone.measure(
                        new MemoryAudio("tone", RATE, tone),
                        OptionalDouble.of(3150),
                        0,
                        Double.POSITIVE_INFINITY);
        assertEquals(figure("speed", "deviation"), speed.deviation().value(), 0.0005);
        reading("weightedRms", speed.weightedRms().value());
        reading("unweightedRms", speed.unweightedRms().value());
        reading("wowRms", speed.wowRms().value());
        reading("flutterRms", speed.flutterRms().value());
        for (int i = 0; i < lines.length; i++) {
            double hz = lines[i][0];
            Optional<Double> peak =
                    speed.components().stream()
                            .filter(c -> Math.abs(c.frequencyHz() - hz) < 0.02)
                            .map(c -> c.peakPercent())
                            .findFirst();
            double right = figures.get("speed").get("peakPercent").get(i).doubleValue();
            assertEquals(right, peak.orElseThrow(), 0.01 * right, hz + " Hz");
        }
    }

    /** Within half a percent: the filters' edges fall off where the other's cut sharply. */
    private static void reading(String name, double found) {
        double right = figure("speed", name);
        System.out.printf("%s against scipy: %.5f of %.5f %%%n", name, found, right);
        assertEquals(right, found, 0.005 * right, name);
    }
}
