package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Ladders through characteristics that are formulas, their harmonics by Fourier's integral. */
class GainWithoutDistortionTest {

    private static final int POINTS = 500;

    static Stream<Arguments> characteristics() {
        DoubleUnaryOperator tape = x -> Math.tanh(0.5 * x);
        return Stream.of(
                Arguments.of("tape", tape, 99.0, false),
                Arguments.of(
                        "bent with the square", op(x -> x - 0.12 * x * Math.abs(x)), 99.0, false),
                Arguments.of("clipped early", op(x -> clip(x, 0.3)), 99.0, false),
                Arguments.of("clipped late", op(x -> clip(x, 2)), 99.0, false),
                Arguments.of(
                        "tape, then clipped", op(x -> clip(Math.tanh(0.3 * x), 0.6)), 99.0, false),
                Arguments.of("nothing but a wire", op(x -> x), 99.0, false),
                Arguments.of(
                        "tape with a limiter behind it", op(x -> Math.tanh(0.25 * x)), 0.45, true),
                Arguments.of("a wire with a limiter behind it", op(x -> x), 1.5, true));
    }

    private static DoubleUnaryOperator op(DoubleUnaryOperator x) {
        return x;
    }

    private static double clip(double x, double at) {
        return Math.max(-at, Math.min(at, x));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("characteristics")
    void onlyALimiterHoldsAToneDownWithoutDistortingIt(
            String name, DoubleUnaryOperator characteristic, double limit, boolean told) {
        List<LadderStep> steps = new ArrayList<>();
        for (double db = -20; db <= 14; db += 2) {
            double peak = Math.pow(10, db / 20);
            double first = harmonic(characteristic, peak, 1);
            double k3 = 100 * Math.abs(harmonic(characteristic, peak, 3)) / first;
            double thd = k3;
            double out = Math.min(first, limit);
            Double clear = k3 > 1e-3 ? k3 : null;
            StepNoise noise = new StepNoise(1e-3, 1e-3, 1e-3, 1e-4, 0.01, false);
            steps.add(
                    new LadderStep(
                            db, 20 * Math.log10(out), null, clear, thd, 0.0, 1e-4, false, noise));
        }
        Quantity none = Quantity.unknown("Not asked for.");
        Distortion ladder =
                new Distortion(
                        "left", 1000, steps, none, none, none, none, none, none, none, null, null);
        assertEquals(told, GainWithoutDistortion.in(ladder).isPresent(), name);
    }

    private static double harmonic(DoubleUnaryOperator characteristic, double peak, int order) {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / POINTS;
            sum += characteristic.applyAsDouble(peak * Math.sin(angle)) * Math.sin(order * angle);
        }
        return 2 * sum / POINTS;
    }
}
