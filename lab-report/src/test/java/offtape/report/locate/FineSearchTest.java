package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A programme of 62 s, twelve tones of 5 s from 1 s on, of which a match is known roughly. Vectors
 * stand every 20 ms; at the ends of 62 s that is a difference in speed of 0.065 %.
 */
class FineSearchTest {

    private static final int RATE = 2000;
    private static final double SECONDS = 62;
    private static final double HOP_S = SpectralTrace.HOP_S;

    private static final List<Scene.Part> PARTS = parts();

    private static final SpectralTrace PROGRAMME = trace(SECONDS, PARTS).withoutSilence();

    private static List<Scene.Part> parts() {
        List<Scene.Part> out = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            out.add(new Scene.Part(1 + 5 * k, 6 + 5 * k, 160 * Math.pow(1.6, k % 4)));
        }
        return out;
    }

    private static SpectralTrace trace(double seconds, List<Scene.Part> parts) {
        return new Scene(seconds, RATE).with(0.1, parts).trace();
    }

    private static FineSearch in(double seconds, double offset, double stretch) {
        return new FineSearch(PROGRAMME, trace(seconds, Scene.played(PARTS, offset, stretch)));
    }

    /** Place of a moment of the programme by a match, seconds of the recording. */
    private static double place(CoarseSearch.Match match, double programmeSeconds) {
        return match.offsetSeconds() + match.stretch() * programmeSeconds;
    }

    /**
     * The rough match is right about the middle of what is heard to some tenths of a second, and in
     * speed to 4 %: of all, of a recording that begins with the programme's 36th second, of one
     * that ends with its 26th. There only the part in it is to be in its place.
     */
    @ParameterizedTest
    @CsvSource({
        "66, 2, 0.8, -0.3, -0.04, 1, 61",
        "120, 2, 1, 0.3, 0.035, 1, 61",
        "84, 3, 1.25, 0.3, 0.04, 1, 61",
        "84, 3, 1.25, -0.3, 0.04, 1, 61",
        "30, -36, 1, -0.2, -0.035, 37, 61",
        "30, 4, 1, 0.2, 0.035, 1, 25",
        "30, 4, 1, -0.2, -0.035, 1, 25",
    })
    void aRoughMatchIsSharpened(
            double seconds,
            double offset,
            double stretch,
            double late,
            double faster,
            double from,
            double to) {
        double middle = (from + to) / 2;
        double roughly = stretch * (1 + faster);
        CoarseSearch.Match rough =
                new CoarseSearch.Match(offset + late + middle * (stretch - roughly), roughly, 0.5);
        CoarseSearch.Match match = in(seconds, offset, stretch).near(rough);
        assertEquals(offset + stretch * from, place(match, from), 1.5 * HOP_S);
        assertEquals(offset + stretch * to, place(match, to), 1.5 * HOP_S);
        double sounding = (to - from) / 60;
        assertEquals(sounding, match.likeness(), 0.03);
    }

    /** What is neither within 4.2 % nor 0.5 s of the rough match stays out of reach. */
    @Test
    void whatIsFarIsNotTaken() {
        FineSearch search = in(66, 2, 1);
        CoarseSearch.Match slow = search.near(new CoarseSearch.Match(2 - 0.08 * 31, 1.08, 1));
        assertTrue(slow.stretch() > 1.08 * 0.954 && slow.likeness() < 0.95, slow.toString());
        CoarseSearch.Match late = search.near(new CoarseSearch.Match(4, 1, 1));
        assertTrue(place(late, 31) > 35 - 0.55, late.toString());
    }

    /**
     * At a speed known better: the match had only the start, or only the end, in its place; 4 % of
     * half the length are 1.24 s, more than the search reaches else.
     */
    @ParameterizedTest
    @CsvSource({"1, 1.04, 0", "1, 1.04, 62", "1.2, 1.16, 0", "1.2, 1.16, 62", "1, 1, 31"})
    void aMatchIsMovedToABetterSpeed(double known, double stretch, double right) {
        double offset = 2;
        CoarseSearch.Match before =
                new CoarseSearch.Match(offset + right * (stretch - known), known, 0.5);
        CoarseSearch.Match match = in(80, offset, stretch).at(before, stretch);
        assertEquals(stretch, match.stretch(), 0);
        assertEquals(offset, match.offsetSeconds(), HOP_S);
        assertEquals(1, match.likeness(), 0.03);
    }

    /** Half a second and more from where it is known to lie, at a speed that was right. */
    @Test
    void atTheSameSpeedOnlyTheNeighbourhoodIsLookedAt() {
        FineSearch search = in(66, 2, 1);
        assertEquals(2, search.at(new CoarseSearch.Match(2.7, 1, 1), 1).offsetSeconds(), HOP_S);
        assertTrue(search.at(new CoarseSearch.Match(3.2, 1, 1), 1).offsetSeconds() > 2.35);
        // 1 % more in speed adds 0.31 s of reach, about the middle at 31 s
        CoarseSearch.Match far = new CoarseSearch.Match(3.8 + 0.01 * 31, 0.99, 1);
        assertTrue(search.at(far, 1).offsetSeconds() > 2.6);
    }

    /** The recording lies so much behind a map, at its speed and pitch. */
    @ParameterizedTest
    @CsvSource({"1, 1.5", "1, -1.5", "1, 0", "1.2, 0.5", "0.8, -0.74"})
    void latenessIsThatAgainstTheMap(double stretch, double late) {
        TimeMap map = TimeMap.straight(3, stretch, SECONDS);
        assertEquals(
                late, in(80, 3 + late, stretch).lateSeconds(map, stretch), 1e-9 + 0.51 * HOP_S);
    }

    /** A map that bends: the second half is 4 % slower, but by pitch only the mean is known. */
    @Test
    void theMapMayBend() {
        TimeMap map = new TimeMap(new double[] {0, 31, 62}, new double[] {2, 33, 65.24});
        List<Scene.Part> parts =
                PARTS.stream()
                        .map(
                                p ->
                                        new Scene.Part(
                                                0.4 + map.recordingSeconds(p.from()),
                                                0.4 + map.recordingSeconds(p.to()),
                                                p.hz() * map.speedRatio(p.from())))
                        .toList();
        FineSearch search = new FineSearch(PROGRAMME, trace(70, parts));
        assertEquals(0.4, search.lateSeconds(map, 1.02), 0.02);
    }

    @Test
    void whereNothingIsBetterNothingIsLate() {
        FineSearch search = new FineSearch(PROGRAMME, trace(66, List.of()));
        assertEquals(0, search.lateSeconds(TimeMap.straight(2, 1, SECONDS), 1), 0);
        CoarseSearch.Match match = search.at(new CoarseSearch.Match(2, 1, 1), 1);
        assertEquals(0, match.likeness(), 0);
    }
}
