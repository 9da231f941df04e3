package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class AxisTest {

    @Test
    void audioFrequenciesHaveTheUsualTicks() {
        assertEquals(
                List.of("20", "50", "100", "200", "500", "1k", "2k", "5k", "10k", "20k"),
                labels(Axis.audioFrequency(Reader.ENGLISH, 20, 20_000)));
    }

    @Test
    void linearTicksAreRoundAndInside() {
        assertEquals(
                List.of("−25", "−20", "−15", "−10", "−5", "0", "5"),
                labels(Axis.linear("dB", -25, 5)));
        assertEquals(
                List.of("−0.3", "−0.2", "−0.1", "0", "0.1", "0.2", "0.3"),
                labels(Axis.linear("%", -0.3, 0.3)));
    }

    @Test
    void linearTicksHaveAsManyDecimalsAsEachOther() {
        assertEquals(
                List.of("45.36", "45.38", "45.40", "45.42", "45.44"),
                labels(Axis.linear("µs", 45.35, 45.45)));
        assertEquals(
                List.of("0", "0.05", "0.10", "0.15", "0.20", "0.25"),
                labels(Axis.linear("%", 0, 0.25)));
    }

    @Test
    void logarithmicTicksFollowTheDecades() {
        assertEquals(List.of("0.1", "0.3", "1", "3", "10"), labels(Axis.oneThree("%", 0.05, 20)));
        assertEquals(List.of("0.002", "0.005", "0.01"), labels(Axis.oneTwoFive("%", 0.002, 0.01)));
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.5", "0.5, 0.5", "1.1, 2", "6, 10", "0.00021, 0.0005", "100, 100"})
    void niceStepsAreOneTwoOrFive(double least, double step) {
        assertEquals(step, Axis.niceStep(least), 1e-12 * step);
    }

    @Test
    void rangesThatCannotBeDrawnAreRefused() {
        assertThrows(
                IllegalArgumentException.class, () -> new Axis("", 1, 1, false, List.of(), false));
        assertThrows(
                IllegalArgumentException.class, () -> new Axis("", 0, 1, true, List.of(), false));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Axis("", 0, Double.NaN, false, List.of(), false));
    }

    private static List<String> labels(Axis axis) {
        return axis.ticks().stream().map(Tick::label).toList();
    }
}
