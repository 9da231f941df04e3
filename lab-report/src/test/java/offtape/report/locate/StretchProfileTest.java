package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Readings over a programme of 100 s. */
class StretchProfileTest {

    private static List<ToneStretches.Reading> readings(
            double from, double to, int count, DoubleUnaryOperator stretch) {
        List<ToneStretches.Reading> out = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double t = count == 1 ? from : from + (to - from) * i / (count - 1);
            out.add(new ToneStretches.Reading(t, stretch.applyAsDouble(t), 1));
        }
        return out;
    }

    private static StretchProfile fit(List<ToneStretches.Reading> readings) {
        return StretchProfile.fit(readings, 1.02, 100);
    }

    @Test
    void withoutReadingsTheMatchIsBelieved() {
        assertEquals(1.02, fit(List.of()).at(0));
        assertEquals(1.02, fit(List.of()).at(80));
    }

    /** Of two readings, or of many within half of the programme, no slope is believed. */
    @Test
    void fewOrNarrowReadingsGiveTheirMean() {
        DoubleUnaryOperator rising = t -> 1 + 1e-5 * t;
        StretchProfile two = fit(readings(10, 90, 2, rising));
        assertEquals(1.0005, two.at(0), 1e-12);
        assertEquals(1.0005, two.at(100), 1e-12);
        StretchProfile narrow = fit(readings(20, 69, 9, rising));
        assertEquals(1.000445, narrow.at(0), 1e-9);
        assertEquals(1.000445, narrow.at(90), 1e-9);
    }

    /** A reading of three seconds counts three times one of one second. */
    @Test
    void longReadingsWeighMore() {
        StretchProfile mean =
                fit(
                        List.of(
                                new ToneStretches.Reading(10, 1.001, 3),
                                new ToneStretches.Reading(20, 1.005, 1)));
        assertEquals(1.002, mean.at(50), 1e-12);
    }

    @Test
    void threeReadingsOverMoreThanHalfGiveALine() {
        StretchProfile line = fit(readings(20, 75, 3, t -> 1 + 1e-5 * t));
        assertEquals(1, line.at(0), 1e-9);
        assertEquals(1.001, line.at(100), 1e-9);
    }

    /** Of seven the best line of a parabola: over −1, −⅔ … 1 the mean of x² is 4/9. */
    @Test
    void eightReadingsGiveAParabola() {
        DoubleUnaryOperator bend = t -> 1 + 1e-3 * Math.pow(t / 50 - 1, 2);
        StretchProfile eight = fit(readings(0, 100, 8, bend));
        for (double t : new double[] {0, 30, 50, 100}) {
            assertEquals(bend.applyAsDouble(t), eight.at(t), 1e-9);
        }
        StretchProfile seven = fit(readings(0, 100, 7, bend));
        assertEquals(1 + 1e-3 * 4 / 9, seven.at(50), 1e-9);
        assertEquals(1 + 1e-3 * 4 / 9, seven.at(0), 1e-9);
    }

    /** One of ten is 1 % off: the rest lie 0.1 % from the mean, and it ten times as far. */
    @Test
    void aReadingFarFromTheRestIsLeftOut() {
        List<ToneStretches.Reading> all = readings(10, 40, 9, t -> 1);
        all.add(new ToneStretches.Reading(30, 1.01, 1));
        assertEquals(1, fit(all).at(50), 1e-12);
        // of 0.98, 1 … 1.02 none is five times as far as the median
        List<ToneStretches.Reading> spread = readings(10, 40, 5, t -> 0.98 + (t - 10) / 30 * 0.04);
        assertEquals(1, fit(spread).at(50), 1e-12);
    }
}
