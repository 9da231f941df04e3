package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A programme of four tones in twelve seconds, sought over place and speed. */
class CoarseSearchTest {

    private static final List<Scene.Part> PARTS = Scene.FOUR_TONES;

    private static final SpectralTrace PROGRAMME =
            new Scene(12).with(0.1, PARTS).trace().withoutSilence();

    private static CoarseSearch in(double seconds, List<Scene.Part> parts) {
        return new CoarseSearch(
                PROGRAMME, new Scene(seconds).with(0.1, parts).withHiss(1e-4).trace());
    }

    /** A step of speed is 0.4 %: of 12 s it moves the ends by 24 ms, little over a vector. */
    @ParameterizedTest
    @CsvSource({"3, 1", "3, 0.8", "5, 1.3", "0, 1", "-1.5, 1"})
    void placeAndSpeedAreFound(double offset, double stretch) {
        CoarseSearch search = in(offset + 12 * stretch + 2, Scene.played(PARTS, offset, stretch));
        CoarseSearch.Match best = search.best(0.9 * stretch, 1.12 * stretch, 1).get(0);
        assertEquals(stretch, best.stretch(), 0.008 * stretch);
        double middle = best.offsetSeconds() + 6 * best.stretch();
        assertEquals(offset + 6 * stretch, middle, 0.05);
        double missing = offset < 0 ? (-offset - 0.5) / 10.5 : 0;
        assertEquals(1 - missing, best.likeness(), 0.06);
    }

    /** Between the bounds alone, of which both are tried. */
    @Test
    void onlySpeedsWithinTheBoundsAreTried() {
        CoarseSearch search = in(18, Scene.played(PARTS, 1, 1.25));
        double above = search.best(1.25, 1.5, 1).get(0).stretch();
        assertTrue(above >= 1.25 - 1e-9 && above < 1.265, "" + above);
        double below = search.best(0.9, 1.25, 1).get(0).stretch();
        assertTrue(below <= 1.25 + 1e-9 && below > 1.235, "" + below);
        assertTrue(search.best(0.9, 1.1, 1).get(0).stretch() <= 1.1 + 1e-9);
    }

    /** The programme twice, at two speeds: the neighbours in speed of each are the same match. */
    @Test
    void differentMatchesComeOnceEachTheMostLikeFirst() {
        List<Scene.Part> both = new ArrayList<>(Scene.played(PARTS, 1, 1));
        both.addAll(Scene.played(PARTS.subList(0, 3), 16, 1.3));
        List<CoarseSearch.Match> best = in(34, both).best(0.8, 1.5, 2);
        assertEquals(2, best.size());
        assertEquals(1, best.get(0).stretch(), 0.01);
        assertEquals(1, best.get(0).offsetSeconds(), 0.1);
        assertEquals(1.3, best.get(1).stretch(), 0.015);
        assertTrue(best.get(1).likeness() < best.get(0).likeness());
    }

    /** Two seconds of a programme that would last up to eighteen. */
    @Test
    void aShortRecordingIsSearchedForAllOfTheProgramme() {
        CoarseSearch search = in(2, Scene.played(PARTS, -9 * 1.4, 1.4));
        CoarseSearch.Match best = search.best(1, 1.5, 1).get(0);
        // 5 kHz lasts from 8 to 11.5 s: any speed places it, at its pitch
        assertEquals(1.4, best.stretch(), 0.15);
        double from = -best.offsetSeconds() / best.stretch();
        assertTrue(from > 7.9 && from + 2 / best.stretch() < 11.6, best.toString());
        assertEquals(2 / 1.4 / 10.5, best.likeness(), 0.02);
    }

    @Test
    void silenceIsLikeNothing() {
        CoarseSearch search = new CoarseSearch(PROGRAMME, new Scene(14).trace());
        CoarseSearch.Match none = search.best(0.98, 1.02, 1).get(0);
        assertEquals(0, none.likeness(), 0);
        assertEquals(0, none.offsetSeconds(), 0);
    }

    /**
     * Of a programme of 20 s: within a tenth in speed, by its logarithm, and with middles within a
     * second and a tenth of the 10 s before them, 2 s in all.
     */
    @ParameterizedTest
    @CsvSource({
        "5, 1, 6.99, 1, true",
        "5, 1, 7, 1, false",
        "5, 1, 3.01, 1, true",
        "5, 1, 3, 1, false",
        "5, 1.3, 5, 1.3, true",
        "5, 1, 4, 1.1, true",
        "5, 1, 3.9, 1.11, false",
        "5, 1, 5.9, 0.91, true",
        "5, 1, 6, 0.9, false",
        "5, 1, 3.5, 1.09, true",
        "5, 1, 6.5, 1.09, false",
    })
    void neighboursAreTheSameMatch(
            double offset, double stretch, double other, double otherStretch, boolean same) {
        CoarseSearch.Match a = new CoarseSearch.Match(offset, stretch, 0.9);
        CoarseSearch.Match b = new CoarseSearch.Match(other, otherStretch, 0.5);
        assertEquals(same, a.isSame(b, 20));
        assertEquals(same, b.isSame(a, 20));
    }

    /** Speeds that differ little are of two matches all the same if these lie apart. */
    @Test
    void twoPlacesOfLikeSpeedAreTwoMatches() {
        List<Scene.Part> both = new ArrayList<>(Scene.played(PARTS, 1, 1));
        both.addAll(Scene.played(PARTS, 16, 1.06));
        List<CoarseSearch.Match> best = new ArrayList<>(in(31, both).best(0.97, 1.09, 2));
        best.sort(Comparator.comparingDouble(CoarseSearch.Match::offsetSeconds));
        assertEquals(2, best.size());
        assertEquals(1, best.get(0).offsetSeconds(), 0.1);
        assertEquals(1, best.get(0).stretch(), 0.015);
        assertEquals(16, best.get(1).offsetSeconds(), 0.1);
        assertEquals(1.06, best.get(1).stretch(), 0.015);
    }

    @Test
    void theBeginningIsSoughtByPlace() {
        List<Scene.Part> both = new ArrayList<>(Scene.played(PARTS, 2, 1));
        both.addAll(Scene.played(PARTS, 15, 1));
        double[] like = in(28, both).likenessOfBeginning(PROGRAMME.beginning(150), 1);
        assertEquals(28 / 0.02 + 1, like.length);
        assertEquals(1, like[100], 0.03);
        assertEquals(1, like[750], 0.03);
        assertTrue(like[400] < 0.5, "half way " + like[400]);
        // a second beside it half a second of the first tone lies on the second one
        assertTrue(like[150] < 0.7, "a second on " + like[150]);
    }
}
