package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import offtape.report.locate.LateMoment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Moments a second apart, of which those from the sixth second on come back later. */
class StepSearchTest {

    /** All of the programme lies within one tone of nominal speed. */
    private static final ExpectedTime NOMINAL =
            new ExpectedTime(List.of(new HeardTone(0, 100, 1, null, 1000)));

    private static List<Jump> jumps(int count, ExpectedTime time, IntToDoubleFunction late) {
        List<LateMoment> moments =
                IntStream.range(0, count)
                        .mapToObj(i -> new LateMoment("part", i, late.applyAsDouble(i)))
                        .toList();
        return StepSearch.of(moments, time);
    }

    private static List<Jump> step(int count, double seconds) {
        return jumps(count, NOMINAL, i -> 3 + (i < 6 ? 0 : seconds));
    }

    /** 3 s late as a whole, the places are those of the recording. */
    @ParameterizedTest
    @ValueSource(doubles = {0.010, -0.010, 0.0016, -0.0016})
    void aStepLiesBetweenTheTwoMomentsNextToIt(double seconds) {
        List<Jump> found = step(12, seconds);
        assertEquals(1, found.size());
        assertEquals(8, found.get(0).fromSeconds(), 1e-9);
        assertEquals(9 + seconds, found.get(0).toSeconds(), 1e-9);
        assertEquals(seconds, found.get(0).lateSeconds(), 1e-12);
    }

    /** Edges tell no less than 1.5 ms. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0014, -0.0014, 0})
    void whatEdgesMayErrByIsNone(double seconds) {
        assertEquals(List.of(), step(12, seconds));
    }

    /** Four moments on each side of a place are compared, and two more show what is usual. */
    @Test
    void fewMomentsTellNothing() {
        assertEquals(List.of(), jumps(9, NOMINAL, i -> i < 8 ? 0 : 0.01));
        assertEquals(1, jumps(10, NOMINAL, i -> i < 9 ? 0 : 0.01).size());
    }

    /** The first and the last place have one moment on one side. */
    @ParameterizedTest
    @ValueSource(ints = {1, 11})
    void stepsNextToTheEndsAreFound(int first) {
        List<Jump> found = jumps(12, NOMINAL, i -> i < first ? 0 : 0.01);
        assertEquals(1, found.size());
        assertEquals(first - 1, found.get(0).fromSeconds(), 1e-9);
    }

    /** Each has its own place and length, in order of time. */
    @Test
    void twoAreTold() {
        List<Jump> found = jumps(40, NOMINAL, i -> (i < 10 ? 0 : 0.025) - (i < 25 ? 0 : 0.01));
        assertEquals(2, found.size());
        assertEquals(9, found.get(0).fromSeconds(), 1e-9);
        assertEquals(0.025, found.get(0).lateSeconds(), 1e-9);
        assertEquals(24.025, found.get(1).fromSeconds(), 1e-9);
        assertEquals(-0.01, found.get(1).lateSeconds(), 1e-9);
    }

    /** Of 10 ms a share comes at once and the rest a second later. */
    @ParameterizedTest
    @CsvSource({"0.0061, 1", "0.0059, 0"})
    void whatComesBitByBitIsNoStep(double atOnce, int count) {
        List<Jump> found = jumps(14, NOMINAL, i -> i < 6 ? 0 : i < 7 ? atOnce : 0.01);
        assertEquals(count, found.size());
    }

    /**
     * A return that gets 0.1 ms later a second: the middles of four moments before and behind a
     * place lie four seconds apart, 0.4 ms. That is usual, so a place stands out by 8 · 1.4826 ·
     * 0.4 = 4.74 ms, which needs a step of 4.34 ms.
     */
    @ParameterizedTest
    @CsvSource({"0.0045, 1", "0.0042, 0", "-0.0055, 1", "-0.0050, 0"})
    void aStepStandsOutOfWhatIsUsual(double seconds, int count) {
        List<Jump> found = jumps(24, NOMINAL, i -> 1e-4 * i + (i < 12 ? 0 : seconds));
        assertEquals(count, found.size());
        found.forEach(j -> assertEquals(seconds + 1e-4, j.lateSeconds(), 1e-9));
    }

    /**
     * Silence between a tone of nominal speed and a slow one, whose moments come 2 ms later a
     * second: 1 ms is expected of the second between them. The tones differ by 1 ms/s from their
     * middle, so the doubt is √(1.4826² + 1²) = 1.788 ms, and a step takes five times that, 8.94.
     */
    @ParameterizedTest
    @CsvSource({"0.0092, 1", "0.0087, 0"})
    void aStepIsBeyondWhatSpeedMayDo(double seconds, int count) {
        ExpectedTime time =
                new ExpectedTime(
                        List.of(
                                new HeardTone(0, 6, 1, null, 1000),
                                new HeardTone(7, 13, 1.002, null, 1000)));
        List<Jump> found = jumps(14, time, i -> i < 7 ? 0 : 0.001 + seconds + 0.002 * (i - 7));
        assertEquals(count, found.size());
        found.forEach(j -> assertEquals(seconds, j.lateSeconds(), 1e-9));
    }

    /** Where no tone tells the speed, lateness may be anything. */
    @Test
    void withoutSpeedThereIsNoStep() {
        assertEquals(List.of(), jumps(12, new ExpectedTime(List.of()), i -> i < 6 ? 0 : 0.5));
    }
}
