package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Programme;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The programme recorded more than once into one file, as takes that are laid end to end here. */
class TakesTest {

    private static final double PAUSE_S = 3;

    /** Hiss up to 12 kHz, so that its colour is not that of a tone. */
    private static final int RATE = 24_000;

    private static final WrittenProgramme WRITTEN = WrittenProgramme.small();
    private static final Programme PROGRAMME = WRITTEN.programme();

    /**
     * Each take as the share of the programme it holds, and the one to be measured: the last of the
     * whole ones, else the last of the longest.
     */
    static Stream<Arguments> theRightTakeIsMeasured() {
        return Stream.of(
                Arguments.of(new double[] {0.4, 1}, 1),
                Arguments.of(new double[] {1, 0.5}, 0),
                Arguments.of(new double[] {1, 1}, 1),
                Arguments.of(new double[] {0.5, 1, 1, 0.45}, 2),
                Arguments.of(new double[] {0.8, 0.5}, 0));
    }

    @ParameterizedTest
    @MethodSource
    void theRightTakeIsMeasured(double[] shares, int right) {
        double[] starts = new double[shares.length];
        double at = 1.234;
        for (int i = 0; i < shares.length; i++) {
            starts[i] = at;
            at += shares[i] * WRITTEN.seconds() + PAUSE_S;
        }
        Location found = Locator.locate(PROGRAMME, laidOut(shares, starts, at));
        assertEquals(starts[right], found.delaySeconds(), 5e-5);
        assertEquals(shares[right] == 1, found.endMarkerFound());
        List<Take> takes = found.takes();
        assertEquals(shares.length, takes.size(), takes.toString());
        for (int i = 0; i < shares.length; i++) {
            assertEquals(starts[i], takes.get(i).fromSeconds(), 0.2);
            assertEquals(shares[i] == 1, takes.get(i).whole(), takes.toString());
        }
    }

    /** A take that is broken off holds nothing after that, though the recording goes on. */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 0.8})
    void whatComesAfterABreakIsNotMeasured(double share) {
        double[] shares = {share};
        Location found = Locator.locate(PROGRAMME, laidOut(shares, new double[] {1}, 30));
        double breaks = 1 + share * WRITTEN.seconds();
        assertEquals(breaks, found.heardToSeconds(), 0.5);
        WRITTEN.sheet()
                .cues()
                .forEach(
                        c ->
                                assertEquals(
                                        1 + WRITTEN.sheet().seconds(c.endFrame()) < breaks,
                                        found.covers(c, WrittenProgramme.RATE),
                                        c.id()));
        assertFalse(found.endMarkerFound());
        assertTrue(found.startMarkerFound());
    }

    private static MemoryAudio laidOut(double[] shares, double[] starts, double seconds) {
        double[] x = new double[(int) Math.round(seconds * RATE)];
        for (int i = 0; i < shares.length; i++) {
            double start = starts[i];
            double last = shares[i] * WRITTEN.seconds();
            double[] take =
                    WRITTEN.returned(RATE, seconds, t -> t - start < last ? t - start : Double.NaN);
            Arrays.setAll(x, k -> x[k] + take[k]);
        }
        return new MemoryAudio("takes.wav", RATE, WrittenProgramme.withHiss(x));
    }
}
