package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The programme recorded more than once into one file, as takes that are laid end to end here. */
class TakesTest {

    private static final double PAUSE_S = 3;

    private static Returns returns;

    @BeforeAll
    static void generate() {
        returns = Returns.ofSmall();
    }

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
            at += shares[i] * returns.seconds() + PAUSE_S;
        }
        Location found = Locator.locate(returns.programme(), laidOut(shares, starts, at));
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
        Location found = Locator.locate(returns.programme(), laidOut(shares, new double[] {1}, 30));
        double breaks = 1 + share * returns.seconds();
        assertEquals(breaks, found.heardToSeconds(), 0.5);
        returns.programme()
                .sheet()
                .cues()
                .forEach(
                        c ->
                                assertEquals(
                                        1 + c.endFrame() / 48_000.0 < breaks,
                                        found.covers(c, Returns.RATE),
                                        c.id()));
        assertFalse(found.endMarkerFound());
        assertTrue(found.startMarkerFound());
    }

    private static MemoryAudio laidOut(double[] shares, double[] starts, double seconds) {
        double[][] out = new double[2][(int) (seconds * Returns.RATE)];
        Random random = new Random(5);
        for (double[] channel : out) {
            Arrays.setAll(channel, i -> 1e-4 * random.nextGaussian());
        }
        for (int i = 0; i < shares.length; i++) {
            int from = (int) Math.round(starts[i] * Returns.RATE);
            int count = (int) (shares[i] * returns.sound()[0].length);
            for (int c = 0; c < 2; c++) {
                for (int k = 0; k < count; k++) {
                    out[c][from + k] += 0.5 * returns.sound()[c][k];
                }
            }
        }
        return new MemoryAudio("takes.wav", Returns.RATE, out);
    }
}
